import type { Finding, Verdict } from '../../rules/finding'
import { strapFamily, type StrapId } from '../../straps/strap'

const SEVERITY: Readonly<Record<Verdict, number>> = { broken: 3, unchecked: 2, tight: 1, clear: 0 }

const concerns = (finding: Finding, strap: StrapId): boolean =>
  finding.subject === strap || finding.subject === `${strapFamily(strap)}-pair`

/**
 * The worst verdict of the findings about a strap or its pair, for the mark at its anchor. A strap that no finding speaks about,
 * or whose worst finding could not be checked, gets `none`: an unchecked strap must not look clear.
 */
export const strapVerdict = (
  findings: readonly Finding[],
  strap: StrapId,
): 'broken' | 'tight' | 'clear' | 'none' => {
  const worst = findings
    .filter((finding) => concerns(finding, strap))
    .reduce<Verdict | null>(
      (before, finding) =>
        before === null || SEVERITY[finding.verdict] > SEVERITY[before] ? finding.verdict : before,
      null,
    )
  return worst === null || worst === 'unchecked' ? 'none' : worst
}
