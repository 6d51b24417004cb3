import type { ReactElement } from 'react'
import { withBelt } from '../domain/layout/edit/change'
import { LIMITS } from '../domain/layout/document/limits'
import type { Arrangement, Belt } from '../domain/straps/strap'
import { useActions, useApp } from '../state/react'
import { currentPlace } from '../state/selectors'
import { ChoiceField, ToggleField, type Choice } from './fields/ChoiceField'
import { LengthField } from './fields/LengthField'

const ARRANGEMENTS: readonly (Choice<`${Arrangement}`> & { readonly points: Arrangement })[] = [
  { value: '4', points: 4, words: '4 points: two shoulder, two lap' },
  { value: '5', points: 5, words: '5 points: and one anti-submarine in the middle' },
  { value: '6', points: 6, words: '6 points: and two anti-submarine' },
  { value: '7', points: 7, words: '7 points: and three anti-submarine' },
]
const MATERIALS: readonly Choice<Belt['material']>[] = [
  { value: 'polyester', words: 'Polyester' },
  { value: 'nylon', words: 'Nylon' },
]
const BUCKLES: readonly Choice<Belt['buckle']>[] = [
  { value: 'latch-and-link', words: 'Latch and link' },
  { value: 'rotary-cam', words: 'Rotary cam' },
]
const ADJUSTERS: readonly Choice<Belt['lapAdjuster']>[] = [
  { value: 'pull-up', words: 'Pull up' },
  { value: 'pull-down', words: 'Pull down' },
]
const WEBBINGS = [
  { key: 'shoulder', words: 'Shoulder' },
  { key: 'lap', words: 'Lap' },
  { key: 'sub', words: 'Anti-submarine' },
] as const

interface BeltFields {
  readonly belt: Belt
  readonly change: (words: string, change: Partial<Belt>) => void
}

const KindFields = ({ belt, change }: BeltFields): ReactElement => (
  <>
    <ChoiceField
      label="Arrangement"
      value={`${belt.arrangement}`}
      choices={ARRANGEMENTS}
      onChange={(value) => {
        const points = ARRANGEMENTS.find((entry) => entry.value === value)?.points
        if (points !== undefined) change('the arrangement', { arrangement: points })
      }}
    />
    <ChoiceField
      label="Buckle"
      value={belt.buckle}
      choices={BUCKLES}
      onChange={(buckle) => change('the buckle', { buckle })}
    />
    <ChoiceField
      label="Webbing material"
      value={belt.material}
      choices={MATERIALS}
      onChange={(material) => change('the webbing material', { material })}
    />
    <ChoiceField
      label="Lap adjusters"
      value={belt.lapAdjuster}
      choices={ADJUSTERS}
      onChange={(lapAdjuster) => change('the lap adjusters', { lapAdjuster })}
    />
    <ToggleField
      label="Head-and-neck restraint worn"
      checked={belt.headAndNeckRestraint}
      onChange={(headAndNeckRestraint) => change('the head-and-neck restraint', { headAndNeckRestraint })}
    />
  </>
)

const LengthFields = ({ belt, change }: BeltFields): ReactElement => (
  <>
    <fieldset>
      <legend>Width of the webbing</legend>
      <div className="field-row">
        {WEBBINGS.map(({ key, words }) => (
          <LengthField
            key={key}
            label={words}
            value={belt.webbingMm[key]}
            limits={LIMITS.webbingMm}
            onCommit={(mm) =>
              change(`the ${words.toLowerCase()} webbing`, { webbingMm: { ...belt.webbingMm, [key]: mm } })
            }
          />
        ))}
      </div>
    </fieldset>
    <div className="field-row">
      <LengthField
        label="Adjuster tail"
        value={belt.adjusterTailMm}
        limits={LIMITS.spareWebbingMm}
        hint="Webbing left to pull on, added to every order length."
        onCommit={(mm) => change('the adjuster tail', { adjusterTailMm: mm })}
      />
      <LengthField
        label="Wrap return"
        value={belt.wrapReturnMm}
        limits={LIMITS.spareWebbingMm}
        hint="Webbing woven back through the three-bar slide, added to wrapped straps."
        onCommit={(mm) => change('the wrap return', { wrapReturnMm: mm })}
      />
    </div>
  </>
)

/** The harness of the current place, as it is ordered. */
export const BeltPanel = (): ReactElement | null => {
  const place = useApp(currentPlace)
  const { edit } = useActions()
  if (place === undefined) return null
  const change = (words: string, part: Partial<Belt>): void =>
    edit(`Change ${words}`, (layout) => withBelt(layout, place.id, part))
  return (
    <section className="panel" aria-label="Belt">
      <KindFields belt={place.belt} change={change} />
      <LengthFields belt={place.belt} change={change} />
    </section>
  )
}
