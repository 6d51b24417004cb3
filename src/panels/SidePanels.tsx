import type { ReactElement } from 'react'
import { useApp } from '../state/react'
import { currentPlaceEvaluation } from '../state/selectors'
import { AnchorsPanel } from './AnchorsPanel'
import { BeltPanel } from './BeltPanel'
import { beltsOutOfUse } from './care/careMark'
import { CarePanel } from './care/CarePanel'
import { FindingsPanel } from './FindingsPanel'
import { FirstLayoutOffer } from './first/FirstLayoutOffer'
import { FitPanel } from './fit/FitPanel'
import { PanelWords } from './help/PanelWords'
import { JobPanel } from './JobPanel'
import { NumbersPanel } from './NumbersPanel'
import { PartsPanel } from './PartsPanel'
import { PeoplePanel } from './PeoplePanel'
import { ProposePanel } from './propose/ProposePanel'
import { AllRuleSetsPanel } from './rules/AllRuleSetsPanel'
import { RulesPanel } from './rules/RulesPanel'
import { SeatPanel } from './SeatPanel'
import { SelectedPart } from './SelectedPart'
import { Tabs, type Tab } from './Tabs'
import { TubesPanel } from './TubesPanel'
import { WeldedPanel } from './welded/WeldedPanel'

const RESULTS = [
  { id: 'findings', words: 'Findings', Panel: FindingsPanel },
  { id: 'numbers', words: 'Numbers', Panel: NumbersPanel },
  { id: 'all-rule-sets', words: 'All rule sets', Panel: AllRuleSetsPanel },
  { id: 'who-fits', words: 'Who fits', Panel: FitPanel },
  { id: 'propose', words: 'Propose', Panel: ProposePanel },
  { id: 'as-welded', words: 'As welded', Panel: WeldedPanel },
] as const

const SET_UP = [
  { id: 'job', words: 'Job', Panel: JobPanel },
  { id: 'seat', words: 'Seat', Panel: SeatPanel },
  { id: 'people', words: 'People', Panel: PeoplePanel },
  { id: 'belt', words: 'Belt', Panel: BeltPanel },
  { id: 'anchors', words: 'Anchors', Panel: AnchorsPanel },
  { id: 'tubes', words: 'Tubes', Panel: TubesPanel },
  { id: 'parts', words: 'Parts', Panel: PartsPanel },
  { id: 'rules', words: 'Rules', Panel: RulesPanel },
  { id: 'care', words: 'Belt care', Panel: CarePanel },
] as const

type PanelTab = (typeof RESULTS)[number] | (typeof SET_UP)[number]
type PanelId = PanelTab['id']

/** Which panel each row of tabs shows; `last` counts where there is only one row. */
export interface ChosenPanels {
  readonly results: PanelId
  readonly setUp: PanelId
  readonly last: PanelId
}

export const FIRST_PANELS: ChosenPanels = { results: 'findings', setUp: 'anchors', last: 'findings' }

const withChosen = (chosen: ChosenPanels, id: PanelId): ChosenPanels =>
  RESULTS.some((tab) => tab.id === id)
    ? { ...chosen, results: id, last: id }
    : { ...chosen, setUp: id, last: id }

const PanelTabs = (props: {
  readonly label: string
  readonly tabs: readonly PanelTab[]
  readonly current: PanelId
  readonly onSelect: (id: PanelId) => void
}): ReactElement => {
  const broken = useApp(
    (state) =>
      currentPlaceEvaluation(state)?.findings.filter((finding) => finding.verdict === 'broken').length ?? 0,
  )
  const outOfUse = useApp((state) => beltsOutOfUse(state.layout))
  const Panel = props.tabs.find(({ id }) => id === props.current)?.Panel
  const tabs = props.tabs.map((tab): Tab<PanelId> => {
    const count = tab.id === 'findings' ? broken : tab.id === 'care' ? outOfUse : 0
    return count > 0 ? { ...tab, mark: String(count), tone: 'broken' as const } : tab
  })
  return (
    <Tabs label={props.label} tabs={tabs} current={props.current} onSelect={props.onSelect}>
      <PanelWords panel={props.current}>{Panel === undefined ? null : <Panel />}</PanelWords>
    </Tabs>
  )
}

/** Everything beside the drawing: results over set-up where there is height for both, else one row of tabs. */
export const SidePanels = (props: {
  readonly arrangement: 'stacked' | 'single'
  readonly chosen: ChosenPanels
  readonly onChoose: (chosen: ChosenPanels) => void
}): ReactElement => {
  const { chosen } = props
  const onSelect = (id: PanelId): void => props.onChoose(withChosen(chosen, id))
  return props.arrangement === 'stacked' ? (
    <div className="side-panels stacked">
      <FirstLayoutOffer />
      <PanelTabs label="Results" tabs={RESULTS} current={chosen.results} onSelect={onSelect} />
      <SelectedPart />
      <PanelTabs label="Set-up" tabs={SET_UP} current={chosen.setUp} onSelect={onSelect} />
    </div>
  ) : (
    <div className="side-panels single">
      <FirstLayoutOffer />
      <SelectedPart />
      <PanelTabs label="Panels" tabs={[...RESULTS, ...SET_UP]} current={chosen.last} onSelect={onSelect} />
    </div>
  )
}
