import { type Elevation, planeDistanceMm, type PlanePointMm, projected } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import { type Anchor, anchorForm } from '../../straps/anchor'
import { mirroredStrap, strapSide } from '../../straps/strap'
import type { Place } from '../document/layout'
import { formWord, handleId, tubeMiddle } from '../edit/handles'
import { isSharedAnchor } from '../edit/mirror'
import { anchorName, familyWord, formsWord } from '../wording/names'
import { placedAdjusters } from './alongStrap'
import type { DrawnPlace } from './drawnPlace'
import type { LabelWish } from './labelPlacement'
import type { DrawingOptions } from './options'
import { junctionOf } from './strapPrimitives'

/** Anchors of a pair that the elevation shows closer together than this carry one label for both. A drawing convention of ours. */
const COINCIDENT_ANCHORS_MM = 1

const anchorAt = (anchor: Anchor, elevation: Elevation): PlanePointMm =>
  projected(anchor.mount.point, elevation)

/** The other side's anchor where the elevation shows both on one spot; null otherwise. */
const coincidentPartner = (
  anchor: Anchor,
  anchors: readonly Anchor[],
  elevation: Elevation,
): Anchor | null => {
  const partner = anchors.find((other) => other.strap === mirroredStrap(anchor.strap))
  if (partner === undefined) return null
  const apartMm = planeDistanceMm(anchorAt(anchor, elevation), anchorAt(partner, elevation))
  return apartMm < COINCIDENT_ANCHORS_MM ? partner : null
}

/** "lap tabs" for two on one spot that are made alike, "shoulder tab" where joined straps share one. */
const pairName = (place: Place, anchor: Anchor, partner: Anchor): string => {
  const form = anchorForm(anchor.mount)
  if (anchorForm(partner.mount) !== form) return anchorName(anchor)
  return `${familyWord(anchor.strap)} ${isSharedAnchor(place, anchor.strap) ? formWord(form) : formsWord(form)}`
}

const anchorLabels = (drawn: DrawnPlace, elevation: Elevation, zones: DrawingOptions['zones']): LabelWish[] =>
  drawn.place.anchors.flatMap((anchor): LabelWish[] => {
    const partner = coincidentPartner(anchor, drawn.place.anchors, elevation)
    if (partner !== null && strapSide(anchor.strap) === 'right') return []
    const name = partner === null ? anchorName(anchor) : pairName(drawn.place, anchor, partner)
    const zone = drawn.evaluation.zones.find((candidate) => candidate.anchorId === anchor.id)
    const isAsked = zones === 'all' || (zones !== 'none' && zones.includes(anchor.id))
    const hasNoZone = isAsked && zone !== undefined && zone[elevation].length === 0
    return [
      {
        key: `${drawn.place.id}/label/${anchor.id}`,
        part: handleId({ kind: 'anchor', placeId: drawn.place.id, anchorId: anchor.id }),
        at: anchorAt(anchor, elevation),
        text: hasNoZone ? `${name}: no permitted zone` : name,
        weight: hasNoZone ? 'strong' : 'plain',
        need: 'must',
      },
    ]
  })

const bodyLabels = (drawn: DrawnPlace, elevation: Elevation): LabelWish[] => {
  const { body, buckle } = drawn.shown
  const placeId = drawn.place.id
  const wish = (name: string, point: PointMm, text: string, part: string | null): LabelWish => ({
    key: `${placeId}/label/${name}`,
    part,
    at: projected(point, elevation),
    text,
    weight: 'plain',
    need: 'may',
  })
  const hip = wish('hip', body.hip, 'hip point', handleId({ kind: 'hip', placeId }))
  const shoulder = wish(
    'shoulder',
    body.shoulderPoint.left,
    'shoulder point',
    handleId({ kind: 'shoulder-point', placeId }),
  )
  const hipBone = wish('hip-bone', body.frontHipBone.left, 'front hip bone', null)
  return [hip, shoulder, ...(buckle === null ? [] : [wish('buckle', buckle, 'buckle', null)]), hipBone]
}

/** The junction of joined straps and one adjuster of each family, where there is room for their names. */
const strapLabels = (drawn: DrawnPlace, elevation: Elevation): LabelWish[] => {
  const junction = junctionOf(drawn)
  const adjusters = placedAdjusters(drawn.place.belt, drawn.shown.paths)
  const wish = (name: string, point: PointMm, text: string, part: string | null): LabelWish => ({
    key: `${drawn.place.id}/label/${name}`,
    part,
    at: projected(point, elevation),
    text,
    weight: 'plain',
    need: 'if-free',
  })
  return [
    ...(junction === null ? [] : [wish('junction', junction, 'junction', null)]),
    ...adjusters.flatMap(({ path, family, line }) => {
      const middle = line[Math.floor(line.length / 2)]
      const text = `${familyWord(path.strap)} adjuster`
      const part = `${drawn.place.id}/${path.strap}`
      const isNamed = adjusters.find((other) => other.family === family)?.path === path
      return middle === undefined || !isNamed ? [] : [wish(`adjuster/${path.strap}`, middle, text, part)]
    }),
  ]
}

/** The middles of the tubes; harness bars by all means, the rest where there is room. */
const tubeLabels = (tubes: readonly Tube[], elevation: Elevation): LabelWish[] =>
  tubes
    .filter((tube) => tube.name !== '')
    .map((tube) => ({
      key: `label/${tube.id}`,
      part: handleId({ kind: 'tube-height', tubeId: tube.id }),
      at: projected(tubeMiddle(tube), elevation),
      text: tube.name,
      weight: 'plain',
      need: tube.role === 'harness-bar' ? 'must' : 'if-free',
    }))

/**
 * Names of parts in the order of their importance: what is mounted, then the bars, then what it is measured from. `tubes` are those
 * that the elevation really draws: a rail hidden behind its twin has no line to point at.
 */
export const partLabels = (
  places: readonly DrawnPlace[],
  tubes: readonly Tube[],
  elevation: Elevation,
  zones: DrawingOptions['zones'],
): readonly LabelWish[] => [
  ...places.flatMap((drawn) => anchorLabels(drawn, elevation, zones)),
  ...tubeLabels(
    tubes.filter((tube) => tube.role === 'harness-bar'),
    elevation,
  ),
  {
    key: 'label/datum',
    part: null,
    at: { uMm: 0, vMm: 0 },
    text: 'datum',
    weight: 'plain',
    need: 'must',
  },
  ...places.flatMap((drawn) => bodyLabels(drawn, elevation)),
  ...places.flatMap((drawn) => strapLabels(drawn, elevation)),
  ...tubeLabels(
    tubes.filter((tube) => tube.role !== 'harness-bar'),
    elevation,
  ),
]
