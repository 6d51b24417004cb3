import { agreementOf } from '../../../domain/layout/agreement/agreement'
import { fingerprintCode, layoutFingerprint } from '../../../domain/layout/agreement/fingerprint'
import type { Layout } from '../../../domain/layout/document/layout'
import { agreementText } from '../../../domain/layout/wording/agreementText'
import { textRows, type BareRow } from '../../page/section'
import type { Setting } from './partSections'

/** Layouts never change, and the sections are set many times over until they fit: the fingerprint of each is worked out once. */
const known = new WeakMap<Layout, string>()

/** Whether the customer agreed to what is drawn, who and when, and by which code the drawing can be told. */
export const agreementLine = (layout: Layout): string => {
  const before = known.get(layout)
  if (before !== undefined) return before
  const code = fingerprintCode(layoutFingerprint(layout))
  const line = `Customer: ${agreementText(agreementOf(layout), layout)} This drawing has the code ${code}.`
  known.set(layout, line)
  return line
}

/** The same as strips of a section. */
export const agreementRows = ({ layout, widthMm, type }: Setting, section: string): readonly BareRow[] =>
  textRows(agreementLine(layout), widthMm, type.body, section)
