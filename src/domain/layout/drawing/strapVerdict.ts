import type { ShownFinding, ShownVerdict } from '../../rules/finding'
import { strapFamily, type StrapId } from '../../straps/strap'

const SEVERITY: Readonly<Record<ShownVerdict, number>> = {
  broken: 4,
  unchecked: 3,
  tight: 2,
  kept: 1,
  clear: 0,
}

const concerns = (finding: ShownFinding, strap: StrapId): boolean =>
  finding.subject === strap || finding.subject === `${strapFamily(strap)}-pair`

/**
 * The worst verdict of the findings about a strap or its pair, for the mark at its anchor. A strap that no finding speaks about,
 * or whose worst finding could not be checked or is not known to be clear yet, gets `none`: it must not look clear.
 */
export const strapVerdict = (
  findings: readonly ShownFinding[],
  strap: StrapId,
): 'broken' | 'tight' | 'clear' | 'none' => {
  const worst = findings
    .filter((finding) => concerns(finding, strap))
    .reduce<ShownVerdict | null>(
      (before, finding) =>
        before === null || SEVERITY[finding.verdict] > SEVERITY[before] ? finding.verdict : before,
      null,
    )
  return worst === null || worst === 'unchecked' || worst === 'kept' ? 'none' : worst
}
