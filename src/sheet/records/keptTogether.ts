import type { BareRow } from '../page/section'

/** Lines of one short paragraph, which no frame's end parts. For texts of the program only: what somebody typed may be longer than a page. */
export const keptTogether = (lines: readonly BareRow[]): readonly BareRow[] =>
  lines.map((row, index) => ({ ...row, keepWithNext: index < lines.length - 1 }))
