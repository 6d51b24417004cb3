import type { ReactElement } from 'react'
import type { Place } from '../domain/layout/document/layout'
import { LIMITS } from '../domain/layout/document/limits'
import { withAdjuster, withShoulderTail } from '../domain/layout/edit/changeBelt'
import {
  type Adjuster,
  areShoulderStrapsJoined,
  type Belt,
  type StrapFamily,
  strapFamily,
  strapsOf,
} from '../domain/straps/strap'
import { useActions } from '../state/react'
import { SwitchField, ToggleField, type Choice } from './fields/ChoiceField'
import { LengthField } from './fields/LengthField'

const FAMILIES = [
  { family: 'shoulder', words: 'Shoulder' },
  { family: 'lap', words: 'Lap' },
  { family: 'sub', words: 'Anti-submarine' },
] as const satisfies readonly { family: StrapFamily; words: string }[]

export const familiesOf = (belt: Belt) => {
  const families = strapsOf(belt).map(strapFamily)
  return FAMILIES.filter(({ family }) => families.includes(family))
}

type Width = '2 in' | '3 in' | 'other'

/** The two widths that webbing is sold in. Source: common practice, no source. */
const WIDTHS_MM = { '2 in': 50.8, '3 in': 76.2 } as const
const WIDTHS: readonly Choice<Width>[] = [
  { value: '2 in', words: '2 in (51 mm)' },
  { value: '3 in', words: '3 in (76 mm)' },
]

/** 51 and 76 mm are the same webbing as 2 and 3 in. */
const widthOf = (mm: number): Width =>
  Math.round(mm) === 51 ? '2 in' : Math.round(mm) === 76 ? '3 in' : 'other'

/** The webbing of each family: one of the two common widths, or any other typed. */
export const WebbingFields = (props: {
  readonly belt: Belt
  readonly change: (words: string, change: Partial<Belt>) => void
}): ReactElement => {
  const { belt, change } = props
  const set = (family: StrapFamily, words: string, mm: number): void =>
    change(`the ${words.toLowerCase()} webbing`, { webbingMm: { ...belt.webbingMm, [family]: mm } })
  return (
    <fieldset>
      <legend>Width of the webbing, each kind of strap by itself</legend>
      {familiesOf(belt).map(({ family, words }) => (
        <div key={family} className="field-row">
          <SwitchField
            label={`${words} straps`}
            value={widthOf(belt.webbingMm[family])}
            choices={WIDTHS}
            onChange={(width) => width !== 'other' && set(family, words, WIDTHS_MM[width])}
          />
          <LengthField
            label={`${words} width`}
            value={belt.webbingMm[family]}
            limits={LIMITS.webbingMm}
            onCommit={(mm) => set(family, words, mm)}
          />
        </div>
      ))}
    </fieldset>
  )
}

/** A tail to start from when the straps are joined: the junction well behind the neck. A starting value, our judgement. */
const STARTING_TAIL_MM = 150

/** Whether the two shoulder straps end in one tail, and how long that is. */
export const JoinedFields = ({ place }: { readonly place: Place }): ReactElement | null => {
  const { edit } = useActions()
  const { belt } = place
  if (belt.arrangement === 3) return null
  const isJoined = areShoulderStrapsJoined(belt)
  return (
    <>
      <ToggleField
        label="Shoulder straps joined behind the neck"
        hint="Both then end in one tail on one anchor. Several rule books do not allow it."
        checked={isJoined}
        onChange={(checked) =>
          edit(checked ? 'Join the shoulder straps' : 'Part the shoulder straps', (layout) =>
            withShoulderTail(layout, place.id, checked ? STARTING_TAIL_MM : null),
          )
        }
      />
      {isJoined ? (
        <LengthField
          label="Tail from the anchor to the junction"
          value={belt.shoulderTailMm ?? null}
          limits={LIMITS.shoulderTailMm}
          onCommit={(mm) =>
            edit('Change the tail of the shoulder straps', (layout) => withShoulderTail(layout, place.id, mm))
          }
        />
      ) : null}
    </>
  )
}

/** The body of a common adjuster along the strap. A starting value, our judgement: to be measured on the belt. */
const STARTING_BODY_MM = 60

const AdjusterRow = (props: {
  readonly place: Place
  readonly family: StrapFamily
  readonly words: string
}): ReactElement => {
  const { place, family, words } = props
  const { edit } = useActions()
  const adjuster = place.belt.adjusters?.[family]
  const name = `the ${words.toLowerCase()} adjusters`
  const set = (what: string, next: Adjuster | null): void =>
    edit(what, (layout) => withAdjuster(layout, place.id, family, next))
  return (
    <div className="field-row">
      <LengthField
        label={`${words} adjuster, from the anchor`}
        value={adjuster?.fromAnchorMm ?? null}
        limits={LIMITS.adjusterPlaceMm}
        placeholder="not measured"
        onCommit={(mm) =>
          set(`Place ${name}`, { lengthMm: adjuster?.lengthMm ?? STARTING_BODY_MM, fromAnchorMm: mm })
        }
        onClear={adjuster === undefined ? undefined : () => set(`Say nothing about ${name}`, null)}
      />
      {adjuster === undefined ? null : (
        <LengthField
          label={`${words} adjuster, body`}
          value={adjuster.lengthMm}
          limits={LIMITS.adjusterLengthMm}
          onCommit={(mm) => set(`Change the body of ${name}`, { ...adjuster, lengthMm: mm })}
        />
      )}
    </div>
  )
}

/** Where the adjusters lie along their straps, so that they can be kept clear of slots, body and buckle. */
export const AdjusterFields = ({ place }: { readonly place: Place }): ReactElement => (
  <fieldset>
    <legend>Adjusters, along the strap from the anchor to the middle of their body</legend>
    {familiesOf(place.belt).map(({ family, words }) => (
      <AdjusterRow key={family} place={place} family={family} words={words} />
    ))}
    <small className="hint">Empty: nothing is checked about where that adjuster lies.</small>
  </fieldset>
)
