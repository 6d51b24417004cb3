import type { ReactElement } from 'react'
import { withBelt } from '../domain/layout/edit/changeBelt'
import { LIMITS } from '../domain/layout/document/limits'
import {
  type Arrangement,
  type Belt,
  type DiagonalShoulder,
  diagonalShoulder,
  type ThighStraps,
  thighStraps,
} from '../domain/straps/strap'
import { useActions, useApp } from '../state/react'
import { currentPlace } from '../state/selectors'
import { AdjusterFields, JoinedFields, WebbingFields } from './BeltStraps'
import { BoltFields } from './BoltFields'
import { ChoiceField, SwitchField, ToggleField, type Choice } from './fields/ChoiceField'
import { LengthField } from './fields/LengthField'

const ARRANGEMENTS: readonly (Choice<`${Arrangement}`> & { readonly points: Arrangement })[] = [
  { value: '3', points: 3, words: '3 points: one shoulder, two lap' },
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
const DIAGONALS: readonly Choice<DiagonalShoulder>[] = [
  { value: 'left', words: 'Left shoulder' },
  { value: 'right', words: 'Right shoulder' },
]
const THIGH_STRAPS: readonly Choice<ThighStraps>[] = [
  { value: 'rearward', words: 'Rearward of the groin, through the seat' },
  { value: 'under-thighs', words: 'Under the thighs to the lap anchors, sat on' },
]

interface BeltFields {
  readonly belt: Belt
  readonly change: (words: string, change: Partial<Belt>) => void
}

/** What only some arrangements have: which shoulder, and where the thigh straps run. */
const RunFields = ({ belt, change }: BeltFields): ReactElement | null => {
  const run = thighStraps(belt)
  if (belt.arrangement === 3)
    return (
      <SwitchField
        label="The shoulder strap runs over the"
        value={diagonalShoulder(belt)}
        choices={DIAGONALS}
        onChange={(diagonal) => change('the shoulder of the diagonal', { diagonal })}
      />
    )
  return run === null ? null : (
    <ChoiceField
      label="Thigh straps run"
      value={run}
      choices={THIGH_STRAPS}
      onChange={(value) => change('the run of the thigh straps', { thighStraps: value })}
    />
  )
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
    <RunFields belt={belt} change={change} />
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

const SpareFields = ({ belt, change }: BeltFields): ReactElement => (
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
      <WebbingFields belt={place.belt} change={change} />
      <JoinedFields place={place} />
      <AdjusterFields place={place} />
      <SpareFields belt={place.belt} change={change} />
      <BoltFields place={place} />
    </section>
  )
}
