import type { ReactElement } from 'react'
import type { AnchorDeviation, Deviation } from '../../domain/layout/asWelded/deviation'
import type { Layout } from '../../domain/layout/document/layout'
import { problemOf, qualityLines } from '../../domain/layout/wording/readingLines'
import {
  angleOffText,
  axisOffText,
  cannotTellText,
  deviationWords,
  judgedLength,
} from '../../domain/layout/wording/weldedWords'
import { angleText } from '../../domain/units/angle'
import { lengthText } from '../../domain/units/length'

const AXES = ['x', 'y', 'z'] as const

/** What the readings of one anchor come to, as they are typed: position, deviation, how sure it is, or why there is none. */
export const IntakeResult = (props: {
  readonly layout: Layout
  readonly deviation: AnchorDeviation
}): ReactElement => {
  const { layout, deviation } = props
  const unit = layout.units.length
  const problem = problemOf(deviation.reading, unit)
  const cannotTell = cannotTellText(deviation, unit)
  return (
    <div className="intake-result" role="status" data-testid="intake-result">
      {problem === null ? null : <p className="problems">{problem}</p>}
      <DeviationTable layout={layout} deviation={deviation} />
      {cannotTell === null ? null : <p className="problems">{cannotTell}</p>}
      {qualityLines(deviation, unit).map(({ text, isWarning }) => (
        <p key={text} className={isWarning ? 'problems' : 'hint'}>
          {text}
        </p>
      ))}
    </div>
  )
}

interface Row {
  readonly words: string
  readonly planned: string
  readonly measured: string
  readonly off: string
  readonly deviation: Deviation
  readonly sure: string
}

const rowsOf = ({ units }: Layout, deviation: AnchorDeviation): readonly Row[] => {
  const unit = units.length
  const { planned, position, planDeg, leanDeg, reading } = deviation
  const point = reading.position?.ok === true ? reading.position.value.point : null
  const lengths = AXES.flatMap((axis): readonly Row[] => {
    const own = position?.[axis]
    if (own === undefined || point === null) return []
    return [
      {
        words: axis,
        planned: lengthText(planned[`${axis}Mm`], unit),
        measured: lengthText(point[`${axis}Mm`], unit),
        off: axisOffText(axis, own.off, unit),
        sure: own.uncertainty === null ? '?' : `± ${judgedLength(own.uncertainty, unit)}`,
        deviation: own,
      },
    ]
  })
  const mount = reading.entry.planned
  if (mount.kind !== 'tab') return lengths
  const angles = [
    { words: 'turn', plannedDeg: mount.planDeg, own: planDeg, read: reading.planDeg },
    { words: 'lean', plannedDeg: mount.leanDeg, own: leanDeg, read: reading.leanDeg },
  ].flatMap(({ words, plannedDeg, own, read }): readonly Row[] =>
    own === null || read?.ok !== true
      ? []
      : [
          {
            words,
            planned: angleText(plannedDeg),
            measured: angleText(read.value.mean),
            off: angleOffText(own.off),
            sure: own.uncertainty === null ? '?' : `± ${angleText(own.uncertainty)}`,
            deviation: own,
          },
        ],
  )
  return [...lengths, ...angles]
}

const DeviationTable = (props: {
  readonly layout: Layout
  readonly deviation: AnchorDeviation
}): ReactElement | null => {
  const { layout, deviation } = props
  const rows = rowsOf(layout, deviation)
  if (rows.length === 0) return null
  return (
    <table className="deviations">
      <thead>
        <tr>
          <th scope="col" aria-label="Of" />
          <th scope="col">Planned, {layout.units.length}</th>
          <th scope="col">Measured</th>
          <th scope="col">Off</th>
          <th scope="col">Sure to</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ words, planned, measured, off, sure, deviation: own }) => (
          <tr key={words} data-verdict={own.verdict} data-testid={`off:${words}`} data-value={own.off}>
            <th scope="row">{words}</th>
            <td className="number">{planned}</td>
            <td className="number">{measured}</td>
            <td>
              {off}
              {own.verdict === 'no-tolerance' ? null : <small>{deviationWords(own.verdict)}</small>}
            </td>
            <td className="number">{sure}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
