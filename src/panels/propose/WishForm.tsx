import type { ReactElement } from 'react'
import type { Layout, Place } from '../../domain/layout/document/layout'
import { LIMITS } from '../../domain/layout/document/limits'
import { carBox } from '../../domain/layout/propose/group'
import { type BoxMm, WISH_LIMITS } from '../../domain/layout/propose/wish'
import { anchorName, tubeName } from '../../domain/layout/wording/names'
import { capitalised } from '../../domain/layout/wording/words'
import { lengthWithUnit } from '../../domain/units/length'
import { strapsOf } from '../../domain/straps/strap'
import { chosenTubeIds, type WishDraft } from '../../state/propose/wishDraft'
import { ChoiceField, SwitchField, ToggleField } from '../fields/ChoiceField'
import { LengthField } from '../fields/LengthField'
import { PointFields } from '../fields/PointFields'

interface Props {
  readonly layout: Layout
  readonly place: Place
  readonly draft: WishDraft
  readonly change: (patch: Partial<WishDraft>) => void
}

const ALL = 'all'

/** Ids hold no colon, so that none of them can be taken for "all". */
const anchorValue = (anchorId: string): string => `anchor:${anchorId}`

/** For which anchors positions are looked for. */
export const AnchorChoice = ({ place, draft, change }: Props): ReactElement => {
  const straps = strapsOf(place.belt)
  const anchors = place.anchors.filter(({ strap }) => straps.includes(strap))
  const isKnown = anchors.some(({ id }) => id === draft.anchorId)
  return (
    <ChoiceField
      label="Propose a position for"
      testId="propose-anchor"
      value={isKnown && draft.anchorId !== null ? anchorValue(draft.anchorId) : ALL}
      choices={[
        { value: ALL, words: 'All anchors of this place' },
        ...anchors.map((anchor) => ({
          value: anchorValue(anchor.id),
          words: capitalised(anchorName(anchor)),
        })),
      ]}
      onChange={(value) =>
        change({ anchorId: anchors.find(({ id }) => anchorValue(id) === value)?.id ?? null })
      }
    />
  )
}

const TubeChoice = ({ layout, place, draft, change }: Props): ReactElement => {
  const chosen = chosenTubeIds(draft, layout, place)
  if (layout.tubes.length === 0) return <p className="hint">There are no tubes yet. Draw some under Tubes.</p>
  return (
    <>
      <fieldset className="propose-tubes">
        <legend>Tubes that may carry them</legend>
        {layout.tubes.map(({ id }) => (
          <ToggleField
            key={id}
            label={tubeName(id, layout)}
            checked={chosen.includes(id)}
            onChange={(isChosen) =>
              change({ tubeIds: isChosen ? [...chosen, id] : chosen.filter((other) => other !== id) })
            }
          />
        ))}
      </fieldset>
      <LengthField
        label="Hole from the tube’s surface"
        value={draft.standOffMm}
        limits={WISH_LIMITS.standOffMm}
        hint="For tabs and eyes; a wrap lies on its tube."
        onCommit={(standOffMm) => change({ standOffMm })}
      />
    </>
  )
}

const EMPTY_BOX: BoxMm = { min: { xMm: 0, yMm: 0, zMm: 0 }, max: { xMm: 0, yMm: 0, zMm: 0 } }

const BoxChoice = ({ layout, draft, change }: Props): ReactElement => {
  const { box } = draft
  return (
    <>
      <ToggleField
        label="Only within a box"
        checked={box !== null}
        hint="Without a box: anywhere between the outermost tubes and anchors of the car."
        onChange={(isBoxed) => change({ box: isBoxed ? (carBox(layout) ?? EMPTY_BOX) : null })}
      />
      {box === null ? null : (
        <>
          <PointFields
            legend="From (front, left, low)"
            point={box.min}
            limits={LIMITS.coordinateMm}
            onCommit={(to) => change({ box: { ...box, min: { ...box.min, ...to } } })}
          />
          <PointFields
            legend="To (rear, right, high)"
            point={box.max}
            limits={LIMITS.coordinateMm}
            onCommit={(to) => change({ box: { ...box, max: { ...box.max, ...to } } })}
          />
        </>
      )}
    </>
  )
}

/** The choices as they stand, short. */
const wishSummary = ({ layout, place, draft }: Props): string => {
  const count = chosenTubeIds(draft, layout, place).length
  const where =
    draft.where === 'tubes'
      ? `along ${count === 1 ? '1 tube' : `${count} tubes`}`
      : draft.box === null
        ? 'anywhere permitted'
        : 'anywhere within a box'
  const apart = lengthWithUnit(draft.apartMm, layout.units.length)
  return `${where}${draft.symmetric ? ', both sides alike' : ''}, ${apart} apart`
}

/** Where the anchors may lie, how alike the sides and how different the proposals are: closed, so that the answer is near. */
export const WishForm = (props: Props): ReactElement => {
  const { draft, change } = props
  return (
    <details className="editor" data-testid="propose-how">
      <summary>
        How to look: <span className="summary-figure">{wishSummary(props)}</span>
      </summary>
      <SwitchField
        label="Where it may lie"
        value={draft.where}
        choices={[
          { value: 'tubes', words: 'Along tubes' },
          { value: 'anywhere', words: 'Anywhere permitted' },
        ]}
        onChange={(where) => change({ where })}
      />
      {draft.where === 'tubes' ? <TubeChoice {...props} /> : <BoxChoice {...props} />}
      <ToggleField
        label="Both sides alike"
        checked={draft.symmetric}
        hint="The other strap of a pair gets the mirror image about the seat’s middle."
        onChange={(symmetric) => change({ symmetric })}
      />
      <LengthField
        label="Proposals differ by at least"
        value={draft.apartMm}
        limits={WISH_LIMITS.apartMm}
        onCommit={(apartMm) => change({ apartMm })}
      />
    </details>
  )
}
