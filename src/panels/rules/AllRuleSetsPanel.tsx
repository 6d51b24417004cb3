import { useDeferredValue, useMemo, useRef, useState, type ReactElement } from 'react'
import { matrixOfSets, ruleSetMatrix, type RuleSetMatrix } from '../../domain/layout/evaluate/ruleSetMatrix'
import { isDisagreement } from '../../domain/layout/wording/matrixText'
import { RULE_SET_GROUPS, type RuleSetGroup } from '../../domain/rules/rule'
import { useApp } from '../../state/react'
import { currentPlace } from '../../state/selectors'
import { ChoiceField, SwitchField, ToggleField } from '../fields/ChoiceField'
import { useMediaQuery } from '../useMediaQuery'
import { MatrixList } from './MatrixList'
import { MatrixTable } from './MatrixTable'
import './rules.css'

type Shape = 'table' | 'list'

const SHAPES = [
  { value: 'table', words: 'Table' },
  { value: 'list', words: 'List' },
] as const

const EVERY_GROUP = 'all'

/** Below this width a table shows two sets at most, and a list reads better. Our judgement. */
const NARROW = '(max-width: 40rem)'

const shownMatrix = (
  matrix: RuleSetMatrix,
  group: RuleSetGroup | typeof EVERY_GROUP,
  onlyDisagreements: boolean,
): RuleSetMatrix => {
  const ofGroup =
    group === EVERY_GROUP
      ? matrix
      : matrixOfSets(matrix, new Set(matrix.sets.filter((set) => set.group === group).map((set) => set.id)))
  if (!onlyDisagreements) return ofGroup
  const rows = ofGroup.rows.filter((row) => isDisagreement(row.agreement))
  const speaking = new Set(rows.flatMap((row) => row.entries.map(({ setId }) => setId)))
  return { rows, sets: ofGroup.sets.filter(({ id }) => speaking.has(id)) }
}

const LargeTable = (props: { readonly children: ReactElement }): ReactElement => {
  const dialog = useRef<HTMLDialogElement>(null)
  const [isOpen, setIsOpen] = useState(false)
  return (
    <>
      <button
        type="button"
        onClick={() => {
          setIsOpen(true)
          dialog.current?.showModal()
        }}
      >
        Show on the whole page
      </button>
      <dialog
        ref={dialog}
        className="matrix-dialog"
        aria-label="All rule sets"
        onClose={() => setIsOpen(false)}
      >
        <div className="group-head">
          <h2>All rule sets</h2>
          <button type="button" onClick={() => dialog.current?.close()}>
            Close
          </button>
        </div>
        {isOpen ? props.children : null}
      </dialog>
    </>
  )
}

/** The current place under every rule set at once: where sources disagree, it is plain. */
export const AllRuleSetsPanel = (): ReactElement => {
  const layout = useDeferredValue(useApp((state) => state.layout))
  const place = useDeferredValue(useApp(currentPlace))
  const isNarrow = useMediaQuery(NARROW)
  const [shape, setShape] = useState<Shape | null>(null)
  const [group, setGroup] = useState<RuleSetGroup | typeof EVERY_GROUP>(EVERY_GROUP)
  const [onlyDisagreements, setOnlyDisagreements] = useState(false)
  const matrix = useMemo(
    () => (place === undefined ? { sets: [], rows: [] } : ruleSetMatrix(layout, place)),
    [layout, place],
  )
  const shown = shownMatrix(matrix, group, onlyDisagreements)
  const groups = RULE_SET_GROUPS.filter((each) => matrix.sets.some((set) => set.group === each))
  const table = <MatrixTable matrix={shown} layout={layout} />
  const current = shape ?? (isNarrow ? 'list' : 'table')
  return (
    <section className="panel matrix-panel" aria-label="All rule sets">
      <p className="hint">
        The place as drawn, held against every rule set. No set is right for every car: the event’s rule book
        decides. Values are the worst over all sittings.
      </p>
      <div className="matrix-choices">
        <ChoiceField
          label="Rule sets of"
          value={groups.some((each) => each === group) ? group : EVERY_GROUP}
          choices={[
            { value: EVERY_GROUP, words: 'Everybody' },
            ...groups.map((each) => ({ value: each, words: each })),
          ]}
          onChange={setGroup}
        />
        <SwitchField label="As a" value={current} choices={SHAPES} onChange={setShape} />
      </div>
      <ToggleField
        label="Only where sources disagree"
        checked={onlyDisagreements}
        onChange={setOnlyDisagreements}
      />
      {shown.rows.length === 0 ? (
        <p className="hint">
          {onlyDisagreements
            ? 'These rule sets agree on everything they ask for here.'
            : 'No rule set has anything to check at this place yet. Add anchors first.'}
        </p>
      ) : current === 'table' ? (
        <>
          <LargeTable>{table}</LargeTable>
          {table}
        </>
      ) : (
        <MatrixList matrix={shown} layout={layout} />
      )}
    </section>
  )
}
