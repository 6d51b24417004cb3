import type { ReactElement } from 'react'
import { ruleSetsOf } from '../domain/layout/document/ruleSetOf'
import { useActions, useApp } from '../state/react'
import { ChoiceField, SwitchField } from './fields/ChoiceField'

const LENGTHS = [
  { value: 'mm', words: 'mm' },
  { value: 'in', words: 'inch' },
] as const

export const LengthUnitSwitch = (): ReactElement => {
  const unit = useApp((state) => state.layout.units.length)
  const { edit } = useActions()
  return (
    <SwitchField
      label="Lengths in"
      value={unit}
      choices={LENGTHS}
      onChange={(length) =>
        edit(length === 'mm' ? 'Show lengths in mm' : 'Show lengths in inches', (layout) => ({
          ...layout,
          units: { ...layout.units, length },
        }))
      }
    />
  )
}

export const RuleSetSelect = (): ReactElement => {
  const ruleSetId = useApp((state) => state.layout.ruleSetId)
  const ownRuleSets = useApp((state) => state.layout.ownRuleSets)
  const choices = ruleSetsOf({ ruleSetId, ...(ownRuleSets === undefined ? {} : { ownRuleSets }) }).map(
    ({ id, name, group }) => ({ value: id, words: name, group }),
  )
  const { edit } = useActions()
  return (
    <ChoiceField
      label="Rule set"
      value={ruleSetId}
      choices={choices}
      testId="rule-set"
      onChange={(id) =>
        edit(`Check against ${choices.find((choice) => choice.value === id)?.words ?? id}`, (layout) => ({
          ...layout,
          ruleSetId: id,
        }))
      }
    />
  )
}

const ELEVATIONS = [
  { value: 'both', words: 'Both' },
  { value: 'top', words: 'Top' },
  { value: 'side', words: 'Side' },
] as const

export const ElevationSwitch = (): ReactElement => {
  const elevations = useApp((state) => state.view.elevations)
  const { setView } = useActions()
  return (
    <SwitchField
      label="Elevation"
      value={elevations}
      choices={ELEVATIONS}
      onChange={(value) => setView({ elevations: value })}
    />
  )
}

const BOARDS = [
  { value: 'drawing', words: 'Drawing' },
  { value: 'list', words: 'List' },
] as const

/** Everything on the drawing is also to be had as text. */
export const BoardSwitch = (): ReactElement => {
  const board = useApp((state) => state.view.board)
  const { setView } = useActions()
  return (
    <SwitchField
      label="Show the car as"
      value={board}
      choices={BOARDS}
      onChange={(value) => setView({ board: value })}
    />
  )
}

const ZONES = [
  { value: 'moving', words: 'While moving' },
  { value: 'in-hand', words: 'Anchor in hand' },
  { value: 'all', words: 'All anchors' },
] as const

/** Source: measured in the zones' own tests, which allow no wider one (domain/zones/README.md); bends at slots are excused there up to 100 mm. */
const STRIP_MM = 16

export const ZoneSwitch = (): ReactElement => {
  const showZones = useApp((state) => state.view.showZones)
  const { setView } = useActions()
  return (
    <>
      <SwitchField
        label="Zones"
        value={showZones}
        choices={ZONES}
        onChange={(value) => setView({ showZones: value })}
      />
      <p className="hint">
        A zone is found by trying places: a strip of up to {STRIP_MM} mm in which a rule is broken can go
        unseen in it. The findings speak of where the anchor is now: they are right there.
      </p>
    </>
  )
}

const THEMES = [
  { value: 'light', words: 'Paper' },
  { value: 'dark', words: 'Blueprint' },
] as const

export const ThemeSwitch = (): ReactElement => {
  const theme = useApp((state) => state.view.theme)
  const { setView } = useActions()
  return (
    <SwitchField
      label="Sheet"
      value={theme}
      choices={THEMES}
      onChange={(value) => setView({ theme: value })}
    />
  )
}
