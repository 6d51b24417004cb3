import type { ReactElement } from 'react'
import type { OfferedPoint } from '../../domain/layout/asWelded/knownPoints'
import type { Layout } from '../../domain/layout/document/layout'
import type { KnownPoint } from '../../domain/measure/measurement'
import { ChoiceField } from '../fields/ChoiceField'
import { knownPointOf, pointChoices } from './measurements'

const isSame = (a: KnownPoint, b: KnownPoint): boolean =>
  a.name === b.name &&
  a.point.xMm === b.point.xMm &&
  a.point.yMm === b.point.yMm &&
  a.point.zMm === b.point.zMm

/**
 * A known point to pick. `chosen`: the one that is picked, which may be offered no more, or lie elsewhere by now; null: none, and what is
 * picked is given on at once.
 */
export const KnownPointField = (props: {
  readonly label: string
  readonly chosen: KnownPoint | null
  readonly offered: readonly OfferedPoint[]
  readonly layout: Layout
  readonly onPick: (known: KnownPoint) => void
  readonly testId?: string
}): ReactElement => {
  const { label, chosen, offered, layout, onPick } = props
  const at = chosen === null ? -1 : offered.findIndex((each) => isSame(knownPointOf(each, layout), chosen))
  const unlisted = chosen === null ? 'Pick a point …' : `${chosen.name} (as it was then)`
  const choices = [
    ...(at === -1 ? [{ value: 'none', words: unlisted }] : []),
    ...pointChoices(offered, layout),
  ]
  return (
    <ChoiceField
      label={label}
      value={at === -1 ? 'none' : String(at)}
      choices={choices}
      {...(props.testId === undefined ? {} : { testId: props.testId })}
      onChange={(value) => {
        const picked = offered[Number(value)]
        if (picked !== undefined) onPick(knownPointOf(picked, layout))
      }}
    />
  )
}
