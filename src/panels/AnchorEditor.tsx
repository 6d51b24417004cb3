import type { ReactElement } from 'react'
import { nearestOnPolyline } from '../domain/geometry/segment'
import type { Tube } from '../domain/geometry/tube'
import type { Place } from '../domain/layout/document/layout'
import { LIMITS } from '../domain/layout/document/limits'
import { asTab, asWrap, removeAnchor, withAnchor } from '../domain/layout/edit/changeAnchors'
import { handleId } from '../domain/layout/edit/handles'
import { mirrorPartner } from '../domain/layout/edit/mirror'
import { movedHandle } from '../domain/layout/edit/move'
import { anchorName, tubeName } from '../domain/layout/wording/names'
import { capitalised } from '../domain/layout/wording/words'
import type { Anchor, EyeMount, TabMount, WrapMount } from '../domain/straps/anchor'
import { strapSide } from '../domain/straps/strap'
import { useActions, useApp } from '../state/react'
import { ChoiceField, SwitchField, ToggleField } from './fields/ChoiceField'
import { AngleField, LengthField } from './fields/LengthField'
import { PointFields } from './fields/PointFields'

interface MountFieldsProps<Mount> {
  readonly mount: Mount
  readonly change: (words: string, mount: Mount) => void
}

const NO_TUBE = ''

const TubeField = (props: {
  readonly tubeId: string | null
  readonly canBeNone: boolean
  readonly onChange: (tubeId: string | null) => void
}): ReactElement => {
  const layout = useApp((state) => state.layout)
  const tubes = layout.tubes.map((tube) => ({ value: tube.id, words: tubeName(tube.id, layout) }))
  return (
    <ChoiceField
      label={props.canBeNone ? 'Welded to' : 'Wrapped round'}
      value={props.tubeId ?? NO_TUBE}
      choices={props.canBeNone ? [{ value: NO_TUBE, words: 'Floor or other structure' }, ...tubes] : tubes}
      onChange={(id) => props.onChange(id === NO_TUBE ? null : id)}
    />
  )
}

const SHEARS = [
  { value: 'single', words: 'Single shear' },
  { value: 'double', words: 'Double shear' },
] as const

const TabFields = ({ mount, change }: MountFieldsProps<TabMount>): ReactElement => (
  <>
    <TubeField tubeId={mount.tubeId} canBeNone onChange={(tubeId) => change('tube', { ...mount, tubeId })} />
    <div className="field-row">
      <AngleField
        label="Plan turn"
        value={mount.planDeg}
        limits={LIMITS.turnDeg}
        hint="From fore-and-aft; + rear edge to the left"
        onCommit={(planDeg) => change('plan turn', { ...mount, planDeg })}
      />
      <AngleField
        label="Lean"
        value={mount.leanDeg}
        limits={LIMITS.leanDeg}
        hint="0 upright, ±90 flat"
        onCommit={(leanDeg) => change('lean', { ...mount, leanDeg })}
      />
    </div>
    <div className="field-row">
      <LengthField
        label="Plate thickness"
        value={mount.thicknessMm}
        limits={LIMITS.thicknessMm}
        onCommit={(thicknessMm) => change('plate thickness', { ...mount, thicknessMm })}
      />
      <LengthField
        label="Hole"
        value={mount.holeDiameterMm}
        limits={LIMITS.holeDiameterMm}
        onCommit={(holeDiameterMm) => change('hole', { ...mount, holeDiameterMm })}
      />
    </div>
    <SwitchField
      label="Bolt in"
      value={mount.shear}
      choices={SHEARS}
      onChange={(shear) => change('shear', { ...mount, shear })}
    />
  </>
)

const EyeFields = ({ mount, change }: MountFieldsProps<EyeMount>): ReactElement => (
  <>
    <TubeField tubeId={mount.tubeId} canBeNone onChange={(tubeId) => change('tube', { ...mount, tubeId })} />
    <div className="field-row">
      <AngleField
        label="Shank plan turn"
        value={mount.planDeg}
        limits={LIMITS.turnDeg}
        hint="Way from the thread to the eye: 0 rearward, + turned to the right"
        onCommit={(planDeg) => change('shank plan turn', { ...mount, planDeg })}
      />
      <AngleField
        label="Shank rise"
        value={mount.riseDeg}
        limits={LIMITS.leanDeg}
        hint="0 level, 90 eye straight above the thread"
        onCommit={(riseDeg) => change('shank rise', { ...mount, riseDeg })}
      />
    </div>
    <div className="field-row">
      <LengthField
        label="Thread"
        value={mount.threadDiameterMm}
        limits={LIMITS.threadDiameterMm}
        onCommit={(threadDiameterMm) => change('thread', { ...mount, threadDiameterMm })}
      />
      <LengthField
        label="Eye, inside"
        value={mount.eyeDiameterMm}
        limits={LIMITS.eyeDiameterMm}
        onCommit={(eyeDiameterMm) => change('eye', { ...mount, eyeDiameterMm })}
      />
    </div>
  </>
)

const SIDES = [
  { value: 'over', words: 'Over the top' },
  { value: 'under', words: 'Under the bottom' },
] as const

const WrapFields = ({ mount, change }: MountFieldsProps<WrapMount>): ReactElement => (
  <>
    <TubeField
      tubeId={mount.tubeId}
      canBeNone={false}
      onChange={(tubeId) => tubeId !== null && change('tube', { ...mount, tubeId })}
    />
    <SwitchField
      label="Strap arrives"
      value={mount.over}
      choices={SIDES}
      onChange={(over) => change('side of the wrap', { ...mount, over })}
    />
    <ToggleField
      label="Guide hoops welded beside the loop"
      checked={mount.guideHoops}
      onChange={(guideHoops) => change('guide hoops', { ...mount, guideHoops })}
    />
  </>
)

/** The tube that a tab becomes a wrap on: the one it is welded to, else the harness bar, else the nearest there is. */
const wrapTube = (tubes: readonly Tube[], anchor: Anchor): Tube | undefined =>
  tubes.find((tube) => tube.id === anchor.mount.tubeId) ??
  tubes.toSorted(
    (a, b) =>
      Number(b.role === 'harness-bar') - Number(a.role === 'harness-bar') ||
      nearestOnPolyline(a.points, anchor.mount.point).distanceMm -
        nearestOnPolyline(b.points, anchor.mount.point).distanceMm,
  )[0]

const KINDS = [
  { value: 'tab', words: 'Tab' },
  { value: 'wrap', words: 'Wrap' },
] as const

const KindSwitch = (props: { readonly place: Place; readonly anchor: Anchor }): ReactElement => {
  const { place, anchor } = props
  const tubes = useApp((state) => state.layout.tubes)
  const { edit, notify } = useActions()
  return (
    <SwitchField
      label="Fixed by"
      value={anchor.mount.kind}
      choices={KINDS}
      onChange={(kind) => {
        const tube = wrapTube(tubes, anchor)
        if (kind === 'wrap' && tube === undefined)
          return notify('problem', 'There is no tube to wrap round yet. Add one under Tubes first.')
        const mount = kind === 'wrap' && tube !== undefined ? asWrap(anchor, tube.id) : asTab(place, anchor)
        edit(`Change the ${anchorName(anchor)} to a ${kind}`, (layout) =>
          withAnchor(layout, place.id, anchor.id, mount),
        )
      }}
    />
  )
}

/** The right side of a pair that moves as one follows the left; its numbers are there but folded away. */
const followsOther = (place: Place, anchor: Anchor): boolean =>
  strapSide(anchor.strap) === 'right' && mirrorPartner(place, anchor) !== null

const AnchorFields = (props: { readonly place: Place; readonly anchor: Anchor }): ReactElement => {
  const { place, anchor } = props
  const { edit } = useActions()
  const name = anchorName(anchor)
  const change = (words: string, mount: Anchor['mount']): void =>
    edit(`Change the ${words} of the ${name}`, (layout) => withAnchor(layout, place.id, anchor.id, mount))
  return (
    <>
      <PointFields
        legend={anchor.mount.kind === 'tab' ? 'Hole centre from the datum' : 'On the tube, from the datum'}
        point={anchor.mount.point}
        limits={LIMITS.coordinateMm}
        onCommit={(to) =>
          edit(`Move the ${name}`, (layout) =>
            movedHandle(layout, { kind: 'anchor', placeId: place.id, anchorId: anchor.id }, to),
          )
        }
      />
      <details>
        <summary>How it is made</summary>
        <KindSwitch place={place} anchor={anchor} />
        {anchor.mount.kind === 'tab' && <TabFields mount={anchor.mount} change={change} />}
        {anchor.mount.kind === 'eye' && <EyeFields mount={anchor.mount} change={change} />}
        {anchor.mount.kind === 'wrap' && <WrapFields mount={anchor.mount} change={change} />}
      </details>
    </>
  )
}

/** One anchor: exactly where, and how it is made. */
export const AnchorEditor = (props: { readonly place: Place; readonly anchor: Anchor }): ReactElement => {
  const { place, anchor } = props
  const { edit, selectHandle } = useActions()
  const id = handleId({ kind: 'anchor', placeId: place.id, anchorId: anchor.id })
  const isSelected = useApp((state) => state.selectedHandleId === id)
  const name = anchorName(anchor)
  return (
    <section
      className="editor"
      data-selected={isSelected ? 'true' : undefined}
      aria-label={capitalised(name)}
    >
      <div className="editor-head">
        <button
          type="button"
          className="link"
          aria-pressed={isSelected}
          onClick={() => selectHandle(isSelected ? null : id)}
        >
          {capitalised(name)}
        </button>
        <button
          type="button"
          aria-label={`Remove the ${name}`}
          onClick={() => edit(`Remove the ${name}`, (layout) => removeAnchor(layout, place.id, anchor.id))}
        >
          Remove
        </button>
      </div>
      {followsOther(place, anchor) ? (
        <details>
          <summary>Mirrors the left side; changing either changes both</summary>
          <AnchorFields place={place} anchor={anchor} />
        </details>
      ) : (
        <AnchorFields place={place} anchor={anchor} />
      )}
    </section>
  )
}
