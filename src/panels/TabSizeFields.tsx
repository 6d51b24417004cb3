import type { ReactElement } from 'react'
import { LIMITS, type NumberLimits } from '../domain/layout/document/limits'
import { type TabForm, tabForm, type TabMount } from '../domain/straps/anchor'
import { tabSize } from '../domain/straps/tabSize'
import { lengthText } from '../domain/units/length'
import { useApp } from '../state/react'
import { lengthUnitOf } from '../state/selectors'
import { LengthField } from './fields/LengthField'

type SizeName = 'widthMm' | 'edgeDistanceMm' | 'gapMm'

interface SizeField {
  readonly name: SizeName
  readonly label: string
  readonly limits: NumberLimits
  /** Why the chosen size is what it is. */
  readonly hint: string
}

const WIDTHS: Readonly<Record<TabForm, { readonly label: string; readonly hint: string }>> = {
  plate: { label: 'Plate width', hint: 'Empty: 15 mm of steel round the hole' },
  clevis: { label: 'Width of each plate', hint: 'Empty: 15 mm of steel round the hole' },
  insert: { label: 'Outside diameter', hint: 'Empty: twice its thread' },
}

const fieldsOf = (form: TabForm): readonly SizeField[] => [
  { name: 'widthMm', limits: LIMITS.tabWidthMm, ...WIDTHS[form] },
  ...(form === 'insert'
    ? []
    : [
        {
          name: 'edgeDistanceMm' as const,
          label: 'Hole centre to end',
          limits: LIMITS.edgeDistanceMm,
          hint: 'Empty: 15 mm of steel round the hole',
        },
      ]),
  ...(form === 'clevis'
    ? [
        {
          name: 'gapMm' as const,
          label: 'Clear between the plates',
          limits: LIMITS.clevisGapMm,
          hint: 'Empty: 8 mm; measure the end fitting',
        },
      ]
    : []),
]

const WORDS: Readonly<Record<SizeName, string>> = {
  widthMm: 'width',
  edgeDistanceMm: 'edge distance',
  gapMm: 'clevis gap',
}

const withSize = (mount: TabMount, name: SizeName, valueMm: number | null): TabMount => {
  const { [name]: _old, ...rest } = mount
  return valueMm === null ? rest : { ...rest, [name]: valueMm }
}

/** The sizes that only a full-size template needs; an empty field means the chosen size that it shows in grey. */
export const TabSizeFields = (props: {
  readonly mount: TabMount
  readonly change: (words: string, mount: TabMount) => void
}): ReactElement => {
  const { mount, change } = props
  const unit = useApp(lengthUnitOf)
  const chosen = tabSize(mount)
  return (
    <div className="field-row">
      {fieldsOf(tabForm(mount)).map(({ name, label, limits, hint }) => (
        <LengthField
          key={name}
          label={label}
          value={mount[name] ?? null}
          limits={limits}
          placeholder={lengthText(chosen[name], unit)}
          hint={hint}
          onCommit={(valueMm) => change(WORDS[name], withSize(mount, name, valueMm))}
          onClear={
            mount[name] === undefined ? undefined : () => change(WORDS[name], withSize(mount, name, null))
          }
        />
      ))}
    </div>
  )
}
