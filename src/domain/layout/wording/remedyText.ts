import type { BrokenLimit, MoveDirection, Remedy } from '../../rules/finding'
import type { PropertyId } from '../../rules/rule'
import { type Anchor, anchorForm } from '../../straps/anchor'
import { mirroredStrap, STRAP_IDS } from '../../straps/strap'
import { angleText } from '../../units/angle'
import type { Layout } from '../document/layout'
import { moveText, proposedText } from './amounts'
import { contradictionText } from './contradictionText'
import { anchorName, familyWord, formsWord, placeName, strapName, subjectName, tubeName } from './names'
import { quantityName } from './quantities'
import { directionWord } from './words'

const allAnchors = (layout: Layout): readonly Anchor[] => layout.places.flatMap(({ anchors }) => anchors)

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

const oneName = (anchor: Anchor | undefined, id: string): string =>
  anchor === undefined ? `anchor ${id}` : `the ${anchorName(anchor)}`

/** "both lap tabs" for a pair of one kind; otherwise one after the other. */
const anchorNames = (anchorIds: readonly string[], layout: Layout): string => {
  const anchors = anchorIds.map((id) => allAnchors(layout).find((each) => each.id === id))
  const [first, second] = anchors
  const isPair =
    anchors.length === 2 &&
    first !== undefined &&
    second?.strap === mirroredStrap(first.strap) &&
    anchorForm(second.mount) === anchorForm(first.mount)
  if (isPair) return `both ${familyWord(first.strap)} ${formsWord(anchorForm(first.mount))}`
  return listed(anchors.map((anchor, index) => oneName(anchor, anchorIds[index] ?? '')))
}

/** That anchors on tubes slide along them; nothing for those on another structure. */
const alongText = (anchorIds: readonly string[], layout: Layout): string => {
  const tubeIds = allAnchors(layout).flatMap(({ id, mount }) =>
    anchorIds.includes(id) && layout.tubes.some((tube) => tube.id === mount.tubeId)
      ? (mount.tubeId ?? [])
      : [],
  )
  const names = [...new Set(tubeIds)].map((id) => tubeName(id, layout))
  return names.length === 0 ? '' : `, along ${listed(names)}`
}

const tabTurnText = (planDeg: number, leanDeg: number): string => {
  const plan =
    planDeg === 0
      ? 'fore and aft'
      : `${angleText(Math.abs(planDeg))} from fore-and-aft, rearward edge to the ${planDeg > 0 ? 'right' : 'left'}`
  const lean =
    leanDeg === 0
      ? 'upright'
      : `leaned ${angleText(Math.abs(leanDeg))}, top edge to the ${leanDeg > 0 ? 'left' : 'right'}`
  return `${plan}, ${lean}`
}

const propertyText = (property: PropertyId, to: string, layout: Layout): string => {
  const number = Number(to)
  const text = proposedText(
    property,
    Number.isFinite(number) && to.trim() !== '' ? number : to,
    layout.units.length,
  )
  switch (property) {
    case 'belt-points':
      return `Take a belt with ${text} points.`
    case 'belt-buckle':
      return `Take a belt with a ${text} buckle.`
    case 'belt-material':
      return `Take ${text} webbing.`
    case 'belt-lap-adjuster':
      return `Take lap adjusters of the ${text}.`
    case 'belt-head-and-neck':
      return to === 'yes' ? 'Wear a head-and-neck restraint.' : 'Leave out the head-and-neck restraint.'
    case 'belt-joined':
      return to === 'yes' ? 'Join the shoulder straps.' : 'Part the shoulder straps.'
    case 'straps-crossed':
      return to === 'yes' ? 'Cross the straps.' : 'Uncross the straps.'
    case 'anchor-form':
      return `Fix the strap to ${text === 'insert' || text === 'eye bolt' ? 'an' : 'a'} ${text}.`
    case 'eye-thread':
      return `Take an eye bolt with a thread of ${text}.`
    case 'webbing-width':
      return `Take webbing ${text} wide.`
    case 'wrap-guide-hoops':
      return to === 'yes' ? 'Weld guide hoops on both sides of the wrap.' : 'Leave out the guide hoops.'
    case 'wrap-tube-role':
      return `Wrap the strap round a ${text}.`
    case 'strap-slot':
      return 'Lead the strap through a slot in the seat.'
    case 'slot-spare':
      return `Take webbing or a slot that leaves ${text}.`
    case 'tab-to-tube':
      return `Bring it to ${text} from its tube.`
    case 'sub-to-lap':
      return `Bring the strap’s anchor to ${text} from the lap strap’s.`
    case 'shoulder-anchorages':
      return to === 'separate'
        ? 'Give each shoulder strap an anchor of its own.'
        : 'Let the shoulder straps share one anchor.'
    case 'wrap-bar-diameter':
      return `Take a bar ${text} in diameter.`
    case 'tab-thickness':
      return `Make the tab ${text} thick.`
    case 'tab-shear':
      return `Hold the bolt in ${text}.`
    case 'bar-diameter':
      return `Take a tube ${text} in outside diameter.`
    case 'bar-wall':
      return `Take a tube with a wall of ${text}.`
    case 'bar-area':
      return `Take a tube with a section of ${text}.`
    case 'bar-second-moment':
      return `Take a tube with a second moment of area of ${text}.`
  }
}

const missingStrapName = (strap: string): string => {
  const known = STRAP_IDS.find((id) => id === strap)
  return known === undefined ? strap : strapName(known)
}

/** Inward and outward are opposite ways on the two sides, so the length is said to be of each. */
const isAcross = (direction: MoveDirection): boolean => direction === 'inward' || direction === 'outward'

/** What the change would break, as a sentence of its own; nothing when it breaks nothing. */
const breaksText = (breaks: readonly BrokenLimit[] | undefined, layout: Layout): string => {
  if (breaks === undefined || breaks.length === 0) return ''
  const named = breaks.map(({ placeId, quantity, subject }) => {
    const place = layout.places.length > 1 ? `${placeName(placeId, layout)}, ` : ''
    return `${place}${subjectName(subject, layout)}, ${quantityName(quantity)}`
  })
  return ` But that breaks another limit: ${[...new Set(named)].join('; ')}.`
}

/** A step's sentence as a part of a longer one. */
const stepClause = (sentence: string): string =>
  `${sentence.slice(0, 1).toLowerCase()}${sentence.slice(1)}`.replace(/\.$/, '')

/** The one change that clears a finding, as one plain sentence in the layout's length unit, and what it would break. */
export const remedyText = (remedy: Remedy, layout: Layout): string => {
  const unit = layout.units.length
  switch (remedy.kind) {
    case 'move-anchors':
      return `Move ${anchorNames(remedy.anchorIds, layout)} ${directionWord(remedy.direction)} ${moveText(remedy.byMm, unit)}${isAcross(remedy.direction) && remedy.anchorIds.length > 1 ? ' each' : ''}${alongText(remedy.anchorIds, layout)}.${breaksText(remedy.breaks, layout)}`
    case 'move-tube':
      return `Move ${tubeName(remedy.tubeId, layout)} ${directionWord(remedy.direction)} ${moveText(remedy.byMm, unit)}, with every anchor on it.${breaksText(remedy.breaks, layout)}`
    case 'turn-tab':
      return `Turn ${anchorNames([remedy.anchorId], layout)}: ${tabTurnText(remedy.planDeg, remedy.leanDeg)}.`
    case 'change-property':
      return propertyText(remedy.property, remedy.to, layout)
    case 'add-anchor':
      return `Place an anchor for the ${missingStrapName(remedy.strap)}.`
    case 'combined':
      return `All of this together: ${remedy.steps.map((step) => stepClause(remedyText(step, layout))).join('; ')}.`
    case 'none':
      return remedy.contradiction === undefined
        ? remedy.reason
        : contradictionText(remedy.contradiction, layout)
  }
}
