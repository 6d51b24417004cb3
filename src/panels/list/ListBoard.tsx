import './list.css'
import { memo, type ReactElement, useDeferredValue, useMemo } from 'react'
import { LIMITS } from '../../domain/layout/document/limits'
import type { Layout } from '../../domain/layout/document/layout'
import type { Handle } from '../../domain/layout/edit/handle'
import { movedHandle } from '../../domain/layout/edit/move'
import { findingSentence } from '../../domain/layout/wording/findingSentence'
import { capitalised, levelWord, verdictWord } from '../../domain/layout/wording/words'
import type { ShownFinding } from '../../domain/rules/finding'
import { lengthWithUnit } from '../../domain/units/length'
import { useActions, useApp } from '../../state/react'
import { currentPlace, currentPlaceEvaluation, currentSitting } from '../../state/selectors'
import { PointFields } from '../fields/PointFields'
import { MARKS, VERDICT_ORDER } from '../verdicts'
import { boardList, type ListedGroup, type ListedLine } from './boardList'

const AXES = [
  { letter: 'x', key: 'xMm' },
  { letter: 'y', key: 'yMm' },
  { letter: 'z', key: 'zMm' },
] as const

/** What of a part does not move, beside the fields of what does. */
const fixedText = ({ moves, point }: Handle, unit: Layout['units']['length']): string =>
  AXES.filter(({ letter }) => !moves[letter])
    .map(({ letter, key }) => `${letter} ${lengthWithUnit(point[key], unit)}`)
    .join(', ')

const PartItem = memo(function PartItem(props: {
  readonly handle: Handle
  readonly worst: string | null
  readonly unit: Layout['units']['length']
  readonly isSelected: boolean
}): ReactElement {
  const { handle, worst, unit, isSelected } = props
  const { edit, selectHandle } = useActions()
  const fixed = fixedText(handle, unit)
  return (
    <li
      className="list-part"
      data-testid={`list-part:${handle.id}`}
      data-selected={isSelected ? 'true' : undefined}
    >
      <PointFields
        legend={handle.name}
        point={handle.point}
        limits={LIMITS.coordinateMm}
        axes={AXES.map(({ letter }) => letter).filter((letter) => handle.moves[letter])}
        onCommit={(change) =>
          edit(`Move ${handle.name}`, (before) => movedHandle(before, handle.ref, change))
        }
      />
      {fixed === '' ? null : <p className="hint">Given by what it lies on: {fixed}</p>}
      {worst === null ? null : <p className="list-worst">{worst}</p>}
      <button
        type="button"
        aria-pressed={isSelected}
        aria-label={`Take ${handle.name} in hand`}
        onClick={() => selectHandle(isSelected ? null : handle.id)}
      >
        Take in hand
      </button>
    </li>
  )
})

const Lines = ({ lines }: { readonly lines: readonly ListedLine[] }): ReactElement => (
  <dl className="list-lines">
    {lines.map(({ key, name, text }) => (
      <div key={key}>
        <dt>{name}</dt>
        <dd>{text}</dd>
      </div>
    ))}
  </dl>
)

const Groups = ({ groups }: { readonly groups: readonly ListedGroup[] }): ReactElement => (
  <div className="list-groups">
    {groups.map(({ key, name, lines }) => (
      <section key={key} aria-label={name}>
        <h4>{name}</h4>
        <Lines lines={lines} />
      </section>
    ))}
  </div>
)

const FindingLines = (props: {
  readonly findings: readonly ShownFinding[]
  readonly layout: Layout
}): ReactElement => (
  <ul className="list-findings">
    {props.findings
      .toSorted((a, b) => VERDICT_ORDER.indexOf(a.verdict) - VERDICT_ORDER.indexOf(b.verdict))
      .map((finding) => {
        const words = findingSentence(finding, props.layout)
        return (
          <li key={finding.id} data-verdict={finding.verdict}>
            <strong>
              <span aria-hidden="true">{MARKS[finding.verdict]} </span>
              {capitalised(verdictWord(finding.verdict))}, {levelWord(finding.level)}:
            </strong>{' '}
            {words.what} {words.rooms} {words.remedy}
          </li>
        )
      })}
  </ul>
)

const Section = (props: { readonly title: string; readonly children: ReactElement }): ReactElement => (
  <section className="list-section" aria-label={props.title}>
    <h3>{props.title}</h3>
    {props.children}
  </section>
)

/** In place of the drawing: everything on it as text, and every point to type. */
export const ListBoard = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  const place = useApp(currentPlace)
  const selectedId = useApp((state) => state.selectedHandleId)
  const shown = useDeferredValue(useApp(currentPlaceEvaluation))
  const sitting = useDeferredValue(useApp(currentSitting))
  const list = useMemo(
    () => (place === undefined ? null : boardList(layout, place, shown, sitting)),
    [layout, place, shown, sitting],
  )
  if (list === null) return <p className="waiting">There is no place yet. Add one under Seat.</p>
  return (
    <div className="list-board" data-testid="list-board" role="region" aria-label="List" tabIndex={0}>
      <Section title="Parts, from the datum">
        <ul className="list-parts">
          {list.parts.map(({ handle, worst }) => (
            <PartItem
              key={handle.id}
              handle={handle}
              worst={worst}
              unit={layout.units.length}
              isSelected={handle.id === selectedId}
            />
          ))}
        </ul>
      </Section>
      {list.people.length === 0 ? (
        <p className="hint">
          There is nobody at this place, so nothing can be computed. Add a person under People.
        </p>
      ) : (
        <>
          <Section title="The person as drawn">
            <Lines lines={list.people} />
          </Section>
          <Section title="Straps and their numbers">
            <Groups groups={list.straps} />
          </Section>
          <Section title="How far each anchor may go with everything else as it is">
            <Lines lines={list.zones} />
          </Section>
          <Section title="Findings">
            <FindingLines findings={shown?.findings ?? []} layout={layout} />
          </Section>
        </>
      )}
    </div>
  )
}
