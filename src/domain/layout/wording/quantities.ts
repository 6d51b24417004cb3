import type { QuantityId } from '../../straps/quantity'

interface QuantityWords {
  readonly name: string
  /** What it measures, between which points, and which way is plus. */
  readonly meaning: string
  /** Said of the subject when the value is below the lower limit; the subject comes before it. */
  readonly low: string
  /** Likewise above the upper limit. */
  readonly high: string
}

const mirrorMeaning = (family: string): string =>
  `How far the left and right ${family} anchors differ in fore-and-aft position and height together.`

const MIRROR_FAULTS = { low: 'match too closely', high: 'do not match left to right' }

const SHOULDER_WORDS = {
  'shoulder-drop': {
    name: 'drop behind the shoulder',
    meaning:
      'Side-view angle of the free strap behind the shoulder, from the horizontal; plus when it falls rearward.',
    low: 'leaves the shoulder too high',
    high: 'falls too steeply behind the shoulder',
  },
  'shoulder-to-spine': {
    name: 'angle to the spine',
    meaning:
      'Side-view angle of the free strap behind the shoulder from square to the torso line; 0° is square, plus falls toward the hip.',
    low: 'leaves the shoulder too high against the spine',
    high: 'pulls too far down along the spine',
  },
  'shoulder-rim-drop': {
    name: 'drop behind the seat',
    meaning:
      'Side-view angle from the seat slot or backrest rim to the anchor, from the horizontal; plus when it falls rearward.',
    low: 'rises too much behind the seat',
    high: 'falls too steeply behind the seat',
  },
  'shoulder-height': {
    name: 'anchor below the shoulder',
    meaning: 'Height of the shoulder point minus that of the anchor; plus when that is lower.',
    low: 'is anchored too high',
    high: 'is anchored too low',
  },
  'shoulder-plan': {
    name: 'shoulder angle from above',
    meaning:
      'Angle of the free strap behind the shoulder from fore-and-aft, seen from above; plus when the straps come together rearward.',
    low: 'runs too far outward behind the shoulder',
    high: 'runs too far inward behind the shoulder',
  },
  'shoulder-spacing': {
    name: 'shoulder anchor spacing',
    meaning: 'Distance between the two shoulder anchors, centre to centre.',
    low: 'are anchored too close together',
    high: 'are anchored too far apart',
  },
  'shoulder-mirror': {
    name: 'shoulder anchor mismatch',
    meaning: mirrorMeaning('shoulder'),
    ...MIRROR_FAULTS,
  },
  'shoulder-free-length': {
    name: 'free length behind the shoulder',
    meaning: 'Length of strap from the shoulder to the anchor, along the strap; it stretches.',
    low: 'is too short behind the shoulder',
    high: 'is too long behind the shoulder',
  },
  'shoulder-length-behind-seat': {
    name: 'length behind the seat',
    meaning:
      'Length of strap from the seat slot or backrest rim to the anchor, the tail of joined straps included.',
    low: 'is too short behind the seat',
    high: 'is too long behind the seat',
  },
  'shoulder-above-hip': {
    name: 'upper anchor above the hip point',
    meaning: 'Height of the strap’s last contact before the body over the hip point; plus when it is above.',
    low: 'is anchored too low above the hip point',
    high: 'is anchored too high above the hip point',
  },
  'shoulder-behind-hip': {
    name: 'upper anchor behind the hip point',
    meaning:
      'Fore-and-aft distance from the hip point to the strap’s last contact before the body; plus when it is behind.',
    low: 'is anchored too far forward',
    high: 'is anchored too far rearward',
  },
  'shoulder-behind-fk': {
    name: 'upper anchor behind the plane FK',
    meaning:
      'Distance of the strap’s last contact before the body from the plane that crosses the torso line at 120°, 260 mm plus the contact’s distance from the seat’s middle up from the hip point; plus when it is behind and above.',
    low: 'is anchored ahead of the plane FK',
    high: 'is anchored too far behind the plane FK',
  },
  'shoulder-reference-plan': {
    name: 'upper anchor from the reference shoulder, from above',
    meaning:
      'Angle, seen from above, of the line from a point 530 mm up the torso line and 120 mm sideways (the 120 from memory) to the strap’s last contact before the body, from straight rearward; plus toward the middle of the seat.',
    low: 'is anchored too far outward',
    high: 'is anchored too far inward',
  },
  'spine-load-share': {
    name: 'spine load share',
    meaning:
      'Force that the shoulder straps push down the torso line, as a share of the tension in a strap, both legs counted, average of the two straps.',
    low: 'push too little down the spine',
    high: 'push too much down the spine',
  },
} as const satisfies Partial<Record<QuantityId, QuantityWords>>

const LAP_WORDS = {
  'lap-angle': {
    name: 'lap angle',
    meaning:
      'Side-view angle above the horizontal of the line from the anchor, or the slot edge that bends the strap, forward to the hip point; 90° is upright.',
    low: 'is too flat',
    high: 'is too steep',
  },
  'lap-run-angle': {
    name: 'lap run angle',
    meaning:
      'Side-view angle above the horizontal of the free piece of the lap strap between the body and the next contact.',
    low: 'runs too flat',
    high: 'runs too steep',
  },
  'lap-shifted-angle': {
    name: 'lap angle to the shifted point',
    meaning: 'As the lap angle, but to the point 64 mm ahead of and 10 mm above the hip point.',
    low: 'is too flat',
    high: 'is too steep',
  },
  'lap-spacing': {
    name: 'lap anchor spacing',
    meaning: 'Distance between the two lap anchors across the seat; minus when left and right are exchanged.',
    low: 'are anchored too close together, or left and right are exchanged',
    high: 'are anchored too far apart',
  },
  'lap-mirror': {
    name: 'lap anchor mismatch',
    meaning: mirrorMeaning('lap'),
    ...MIRROR_FAULTS,
  },
  'lap-off-centre': {
    name: 'lap anchor from the middle',
    meaning: 'Distance of the lap anchor from the middle plane of the seat; plus on the strap’s own side.',
    low: 'is anchored too near the middle of the seat',
    high: 'is anchored too far from the middle of the seat',
  },
  'lap-over-asis': {
    name: 'height above the hip bone',
    meaning:
      'Height of the lap strap over the point of the front hip bone; plus when it lies above it, on the belly.',
    low: 'lies too low on the thigh',
    high: 'lies above the front hip bone, on the belly',
  },
} as const satisfies Partial<Record<QuantityId, QuantityWords>>

const OTHER_WORDS = {
  'sub-to-chest': {
    name: 'angle to the chest line',
    meaning:
      'Side-view angle of the strap from the straight line of the shoulder straps down the chest to the buckle; plus when it runs rearward of that line.',
    low: 'runs too far forward of the chest line',
    high: 'runs too far rearward of the chest line',
  },
  'sub-to-vertical': {
    name: 'angle from vertical',
    meaning: 'Side-view angle of the strap from vertical; plus when its anchor is rearward.',
    low: 'is anchored too far forward',
    high: 'is anchored too far rearward',
  },
  'sub-spacing': {
    name: 'anti-submarine anchor spacing',
    meaning:
      'Distance between the two anti-submarine anchors across the seat; minus when left and right are exchanged.',
    low: 'are anchored too close together, or left and right are exchanged',
    high: 'are anchored too far apart',
  },
  'sub-mirror': {
    name: 'anti-submarine anchor mismatch',
    meaning: mirrorMeaning('anti-submarine'),
    ...MIRROR_FAULTS,
  },
  'slot-bend': {
    name: 'bend at the seat slot',
    meaning:
      'Angle by which the seat slot deflects the taut strap, both faces of a thick shell together; 0° passes clean.',
    low: 'is bent too little by its seat slot',
    high: 'is bent by its seat slot',
  },
  'wrap-square': {
    name: 'wrap to bar',
    meaning: 'Angle between the strap and the bar it is wrapped round; 90° is square.',
    low: 'meets its bar aslant',
    high: 'meets its bar too squarely',
  },
  'tab-twist': {
    name: 'pull out of the tab’s plane',
    meaning: 'Angle between the line of pull and the plane of the tab; 0° is in line.',
    low: 'pulls too nearly in the plane of its tab',
    high: 'pulls its tab out of its plane',
  },
  'shank-angle': {
    name: 'pull from the line of the eye bolt',
    meaning:
      'Angle between the line of pull and the shank of the eye bolt, outward from its thread; 0° is in line.',
    low: 'pulls too nearly in line with its eye bolt',
    high: 'pulls its eye bolt sideways',
  },
  'shoulder-junction': {
    name: 'junction behind the neck',
    meaning:
      'How far behind the back of the neck, taken as the back of the shoulder, the two shoulder straps are joined; minus when ahead of it.',
    low: 'are joined too near the neck',
    high: 'are joined too far behind the neck',
  },
  'adjuster-clearance': {
    name: 'room about the adjuster',
    meaning:
      'Smallest distance along the strap between the adjuster’s body and an edge of the seat, the wearer’s body or the buckle; minus when it overlaps one of them.',
    low: 'has its adjuster too near the seat, the body or the buckle',
    high: 'has its adjuster too far from everything',
  },
  'tube-clearance': {
    name: 'room to the tubes',
    meaning:
      'Smallest distance between the straight pieces of the strap and the outside of any tube but its own; minus when it would pass through one.',
    low: 'runs too near a tube, or through it',
    high: 'is too far from the tubes',
  },
  'helmet-clearance': {
    name: 'helmet clearance',
    meaning: 'Smallest distance between the helmet, at rest, and any tube.',
    low: 'is too close to a tube',
    high: 'is too far from the tubes',
  },
  'body-clearance': {
    name: 'room between person and tubes',
    meaning:
      'Smallest distance between any tube and the person, at rest: trunk, shoulders, pelvis and thighs and the straps on them; minus when a tube would be in the person.',
    low: 'has a tube too close, or in the way',
    high: 'is too far from the tubes',
  },
  'strap-length': {
    name: 'order length',
    meaning:
      'Strap from anchor to buckle along its path, with the loop and return of a wrap and the adjuster tail.',
    low: 'is too short',
    high: 'is too long',
  },
} as const satisfies Partial<Record<QuantityId, QuantityWords>>

const QUANTITY_WORDS: Readonly<Record<QuantityId, QuantityWords>> = {
  ...SHOULDER_WORDS,
  ...LAP_WORDS,
  ...OTHER_WORDS,
}

/** A quantity as a lower-case name. */
export const quantityName = (id: QuantityId): string => QUANTITY_WORDS[id].name

/** What a quantity measures and which way is plus, as one plain sentence. */
export const quantityMeaning = (id: QuantityId): string => QUANTITY_WORDS[id].meaning

/** What is said of a subject whose value lies below or above its limits, to follow the subject's name. */
export const quantityFault = (id: QuantityId, side: 'low' | 'high'): string => QUANTITY_WORDS[id][side]
