import type { ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { readingLines } from '../../domain/layout/wording/readingLines'
import type { MeasuredAnchor } from '../../domain/measure/asWeldedRecord'

/** What was read at one anchor, to read only. */
export const ReadMeasurement = (props: {
  readonly entry: MeasuredAnchor
  readonly layout: Layout
}): ReactElement => {
  const lines = readingLines(props.entry, props.layout.units.length)
  return lines.length === 0 ? (
    <p className="hint">Nothing was measured here.</p>
  ) : (
    <ul className="reading-lines">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  )
}
