import type { Mount } from '../straps/anchor'
import type { QuantityId, Subject } from '../straps/quantity'
import {
  areShoulderStrapsJoined,
  type StrapFamily,
  type StrapId,
  strapFamily,
  strapSide,
  strapsOf,
} from '../straps/strap'
import type { QuantityRule } from './rule'
import type { PropertyScene } from './properties'

/** What decides which straps, pairs and people a quantity ought to have a number for. */
export type SubjectScene = PropertyScene

/** The two straps of a pair; empty for a single strap, the head or the rest of the person. */
export const strapsOfPair = (subject: Subject): readonly StrapId[] => {
  switch (subject) {
    case 'shoulder-pair':
      return ['shoulder-left', 'shoulder-right']
    case 'lap-pair':
      return ['lap-left', 'lap-right']
    case 'sub-pair':
      return ['sub-left', 'sub-right']
    case 'head':
    case 'body':
    case 'shoulder-left':
    case 'shoulder-right':
    case 'lap-left':
    case 'lap-right':
    case 'sub-left':
    case 'sub-right':
    case 'sub-centre':
      return []
  }
}

const strapsIn = (scene: SubjectScene, family: StrapFamily): readonly StrapId[] =>
  strapsOf(scene.belt).filter((strap) => strapFamily(strap) === family)

const pairIn = (scene: SubjectScene, family: StrapFamily): readonly Subject[] =>
  (['left', 'right'] as const).every((side) =>
    strapsIn(scene, family).some((strap) => strapSide(strap) === side),
  )
    ? [`${family}-pair`]
    : []

const strapsMounted = (scene: SubjectScene, kind: Mount['kind']): readonly StrapId[] =>
  strapsOf(scene.belt).filter((strap) =>
    scene.anchors.some((anchor) => anchor.strap === strap && anchor.mount.kind === kind),
  )

/** Straps that have a tube beside them: any tube but the one that they are fixed to. */
const strapsNearTubes = ({ belt, anchors, tubes }: SubjectScene): readonly StrapId[] =>
  strapsOf(belt).filter((strap) => {
    const own = anchors.find((anchor) => anchor.strap === strap)?.mount.tubeId ?? null
    return tubes.some(({ id }) => id !== own)
  })

const strapsInSlots = (scene: SubjectScene): readonly StrapId[] =>
  strapsOf(scene.belt).filter((strap) => scene.seat.slots.some((slot) => slot.straps.includes(strap)))

const subjectsWith = (quantity: QuantityId, scene: SubjectScene): readonly Subject[] => {
  switch (quantity) {
    case 'shoulder-drop':
    case 'shoulder-to-spine':
    case 'shoulder-rim-drop':
    case 'shoulder-height':
    case 'shoulder-plan':
    case 'shoulder-free-length':
    case 'shoulder-length-behind-seat':
    case 'shoulder-above-hip':
    case 'shoulder-behind-hip':
    case 'shoulder-behind-fk':
    case 'shoulder-reference-plan':
      return strapsIn(scene, 'shoulder')
    case 'shoulder-spacing':
    case 'shoulder-mirror':
    case 'spine-load-share':
      return pairIn(scene, 'shoulder')
    case 'lap-angle':
    case 'lap-run-angle':
    case 'lap-shifted-angle':
    case 'lap-over-asis':
    case 'lap-off-centre':
      return strapsIn(scene, 'lap')
    case 'lap-spacing':
    case 'lap-mirror':
      return pairIn(scene, 'lap')
    case 'sub-to-chest':
    case 'sub-to-vertical':
      return strapsIn(scene, 'sub')
    case 'sub-spacing':
    case 'sub-mirror':
      return pairIn(scene, 'sub')
    case 'slot-bend':
      return strapsInSlots(scene)
    case 'wrap-square':
      return strapsMounted(scene, 'wrap')
    case 'tab-twist':
      return strapsMounted(scene, 'tab')
    case 'shank-angle':
      return strapsMounted(scene, 'eye')
    case 'shoulder-junction':
      return areShoulderStrapsJoined(scene.belt) ? pairIn(scene, 'shoulder') : []
    case 'adjuster-clearance':
      return strapsOf(scene.belt).filter((strap) => scene.belt.adjusters?.[strapFamily(strap)] !== undefined)
    case 'tube-clearance':
      return strapsNearTubes(scene)
    case 'helmet-clearance':
      return scene.tubes.length > 0 ? ['head'] : []
    case 'body-clearance':
      return scene.tubes.length > 0 ? ['body'] : []
    case 'strap-length':
      return strapsOf(scene.belt)
  }
}

const FAMILIES = ['shoulder', 'lap', 'sub'] as const

const familyOf = (subject: Subject): StrapFamily | null =>
  FAMILIES.find((family) => subject.startsWith(`${family}-`)) ?? null

/**
 * Everything at a place that a rule's quantity ought to have a number for, whether or not it could be computed: what is missing
 * becomes an unchecked finding. The rule's conditions are not looked at here.
 */
export const ruleSubjects = (
  rule: Pick<QuantityRule, 'quantity' | 'family'>,
  scene: SubjectScene,
): readonly Subject[] =>
  subjectsWith(rule.quantity, scene).filter(
    (subject) => rule.family === null || familyOf(subject) === rule.family,
  )
