import type { ShownFinding } from '../../rules/finding'
import type { ToleranceCase, WeldTolerance } from '../../rules/tolerance'
import { angleText } from '../../units/angle'
import { type LengthUnit, lengthWithUnit } from '../../units/length'
import type { Layout } from '../document/layout'
import { outsideText, valueText } from './amounts'
import { sittingNameUnder } from './names'

/** A chance as people say it, never rounded to none or to all. */
export const chanceText = (chance: number): string => {
  if (chance < 0.01) return 'under 1 %'
  return chance > 0.99 ? 'over 99 %' : `about ${Math.round(100 * chance)} %`
}

const worstText = ({ quantity, limit }: ShownFinding, found: ToleranceCase, unit: LengthUnit): string => {
  if (found.worstValue === null) return 'no number at worst'
  return found.canLeave
    ? outsideText(quantity, found.worstValue, limit, unit)
    : valueText(quantity, found.worstValue, unit)
}

const shareText = ({ chance }: ToleranceCase): string =>
  chance === null || chance === 0 ? '' : `; ${chanceText(chance)} of cars welded so would break it`

/** What the typed weld and measuring error can make of a finding, as one plain sentence; null where nothing was computed. */
export const toleranceSentence = (finding: ShownFinding, layout: Layout): string | null => {
  const found = finding.withinTolerance
  if (found === undefined) return null
  const worst = worstText(finding, found, layout.units.length)
  const whom = sittingNameUnder(finding.ruleId, found.worstSitting, layout)
  const share = shareText(found)
  if (found.worstValue === null)
    return `Could not be checked within the weld and measuring error: a strap may be left without a path (${whom})${share}.`
  if (finding.verdict === 'broken')
    return `With the weld and measuring error it may come to ${worst} at worst (${whom})${share}.`
  return found.canLeave
    ? `Could leave the limits by weld or measuring error: ${worst} at worst (${whom})${share}.`
    : `Stays within the limits for the whole weld and measuring error: ${worst} at worst (${whom}).`
}

/** The typed error in words: "± 5 mm in x, ± 5 mm in y, ± 3 mm in z, tabs ± 2°, recline ± 1°". */
export const toleranceText = (tolerance: WeldTolerance, unit: LengthUnit): string =>
  [
    ...(['x', 'y', 'z'] as const).map(
      (axis) => `± ${lengthWithUnit(tolerance[`${axis}Mm`], unit)} in ${axis}`,
    ),
    `tabs ± ${angleText(tolerance.tabDeg)}`,
    `recline ± ${angleText(tolerance.reclineDeg)}`,
  ].join(', ')

/** How the chance was made, beside every place where one stands. */
export const SPREAD_WORDS: Readonly<Record<WeldTolerance['spread'], string>> = {
  'worst-case': 'Only the worst that can happen is looked for.',
  even: 'Chance: any error within the ± is as likely as any other, each axis on its own; worked out, not drawn by lot.',
  'mostly-small':
    'Chance: small errors are likelier than large ones (normal, standard deviation half of the ±, never beyond it), each axis on its own; worked out, not drawn by lot.',
}
