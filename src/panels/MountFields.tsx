import type { ReactElement } from 'react'
import { LIMITS } from '../domain/layout/document/limits'
import { tubeName } from '../domain/layout/wording/names'
import {
  type EyeMount,
  type Mount,
  type TabForm,
  tabForm,
  type TabMount,
  type WrapMount,
} from '../domain/straps/anchor'
import { useApp } from '../state/react'
import { ChoiceField, SwitchField, ToggleField } from './fields/ChoiceField'
import { AngleField, LengthField } from './fields/LengthField'
import { TabSizeFields } from './TabSizeFields'

interface MountFieldsProps<Kind extends Mount> {
  readonly mount: Kind
  readonly change: (words: string, mount: Kind) => void
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

const PLATE_WORDS: Readonly<Record<TabForm, string>> = {
  plate: 'Plate thickness',
  clevis: 'Thickness of each plate',
  insert: 'Length of the insert',
}

const HELD_WORDS: Readonly<Record<TabMount['shear'], string>> = {
  single: 'The bolt is held from one side: single shear.',
  double: 'The bolt is held from both sides: double shear.',
}

const TabFields = ({ mount, change }: MountFieldsProps<TabMount>): ReactElement => (
  <>
    <TubeField tubeId={mount.tubeId} canBeNone onChange={(tubeId) => change('tube', { ...mount, tubeId })} />
    <div className="field-row">
      <AngleField
        label="Plan turn"
        value={mount.planDeg}
        limits={LIMITS.turnDeg}
        hint="From fore-and-aft; + rear edge to the right"
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
        label={PLATE_WORDS[tabForm(mount)]}
        value={mount.thicknessMm}
        limits={LIMITS.thicknessMm}
        onCommit={(thicknessMm) => change('plate thickness', { ...mount, thicknessMm })}
      />
      <LengthField
        label={tabForm(mount) === 'insert' ? 'Thread' : 'Hole'}
        value={mount.holeDiameterMm}
        limits={LIMITS.holeDiameterMm}
        onCommit={(holeDiameterMm) => change('hole', { ...mount, holeDiameterMm })}
      />
    </div>
    <TabSizeFields mount={mount} change={change} />
    {tabForm(mount) === 'plate' ? (
      <SwitchField
        label="Bolt in"
        value={mount.shear}
        choices={SHEARS}
        onChange={(shear) => change('shear', { ...mount, shear })}
      />
    ) : (
      <p className="hint">{HELD_WORDS[mount.shear]}</p>
    )}
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
    <p className="hint">The webbing is woven back through a three-bar slide behind the loop.</p>
    <ToggleField
      label="Guide hoops welded beside the loop"
      checked={mount.guideHoops}
      onChange={(guideHoops) => change('guide hoops', { ...mount, guideHoops })}
    />
  </>
)

/** How one anchor is made, by what it is. */
export const MountFields = ({ mount, change }: MountFieldsProps<Mount>): ReactElement => {
  switch (mount.kind) {
    case 'tab':
      return <TabFields mount={mount} change={change} />
    case 'eye':
      return <EyeFields mount={mount} change={change} />
    case 'wrap':
      return <WrapFields mount={mount} change={change} />
  }
}
