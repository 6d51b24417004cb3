import type { ExplainView } from '../drawing/explain/explanation'
import type { QuantityId } from '../../straps/quantity'

/** What stands beside the drawing of a quantity, each as plain text. */
export interface QuantityFormula {
  /** With the letters of the drawing; x rearward, y to the occupant's right, z up. */
  readonly formula: string
  /** Which way is plus, or that the value has no sign. */
  readonly sign: string
  /** Where the definition comes from and how it reached us; our own ones say so. */
  readonly source: string
}

const OURS = 'Our definition; trigonometry of a right triangle.'
const NO_SIGN = 'Never negative.'
const EXCHANGED_SIGN = 'Minus when left and right are exchanged.'

const MIRROR_FORMULA = {
  formula: '√((xR − xL)² + (zR − zL)²)',
  sign: 'Never negative; 0 when the two lie on each other in side view.',
  source: 'Our definition; Pythagoras.',
}

const SHOULDER_FORMULAS = {
  'shoulder-drop': {
    formula: 'atan2(zT − zE, xE − xT)',
    sign: 'Plus when the strap falls to the rear, 0° level, minus when it rises.',
    source:
      'Measured from the shoulder rearward as in Formula SAE Rules, 2026 V1, T.2.6 (read in the document); the touching point T is ours.',
  },
  'shoulder-to-spine': {
    formula: 'atan2(zT − zE, xE − xT) − recline',
    sign: '0° square to the spine; plus when the strap falls toward the hip, minus when it rises.',
    source: OURS,
  },
  'shoulder-rim-drop': {
    formula: 'atan2(zR − zA, xA − xR); through a slot from G instead of R',
    sign: 'Plus when the strap falls to the rear, 0° level, minus when it rises.',
    source:
      'Measured from the upper rim of the backrest as in the sporting code’s Appendix J, Article 253-6.2, texts of 1996 and 2012 (read in the document); the point in the slot is ours.',
  },
  'shoulder-height': {
    formula: 'zS − zA',
    sign: 'Plus when the anchor is lower than the shoulder point.',
    source: 'Our definition.',
  },
  'shoulder-plan': {
    formula: 'atan2(inward part of yE − yT, xE − xT)',
    sign: 'Plus when the straps come together to the rear, minus when they spread.',
    source: OURS,
  },
  'shoulder-spacing': {
    formula: '√((xR − xL)² + (yR − yL)² + (zR − zL)²)',
    sign: NO_SIGN,
    source: 'Our definition: between the contacts, centre to centre; distance of two points in space.',
  },
  'shoulder-mirror': MIRROR_FORMULA,
  'shoulder-free-length': {
    formula: '|TE| and on over every further contact to A, each piece in space',
    sign: NO_SIGN,
    source: 'Our definition; distance of two points in space.',
  },
  'shoulder-length-behind-seat': {
    formula: '|GA| in space; of joined straps |GJ| + |JA| where the junction J lies behind the seat',
    sign: 'Never negative; 0 when the anchor is ahead of the rim.',
    source: 'Our definition; distance of two points in space.',
  },
  'shoulder-above-hip': {
    formula: 'zE − zH',
    sign: 'Plus when the last contact before the body is above the hip point.',
    source: 'Our definition; the occupant’s hip point stands for the design reference point of road law.',
  },
  'shoulder-behind-hip': {
    formula: 'xE − xH',
    sign: 'Plus when the last contact before the body is behind the hip point.',
    source: 'Our definition; the occupant’s hip point stands for the design reference point of road law.',
  },
  'shoulder-behind-fk': {
    formula:
      '(E − B)·n; B is 260 mm + |yE − yH| up the torso line from H, n lies at recline + 30° from vertical',
    sign: 'Plus when the contact is behind and above the plane.',
    source:
      '76/115/EEC, Annex I 4.4.4.3: “260 mm + S”, “120°” (read in the document). Which of the two planes at 120° is meant is our reading.',
  },
  'shoulder-reference-plan': {
    formula: 'atan2(inward part of yE − yX, xE − xX); X is 530 mm up the torso line and 120 mm sideways',
    sign: 'Plus toward the middle of the seat.',
    source: '76/115/EEC, Annex I 4.4.4.1: 530 mm read in the document, 120 mm from memory.',
  },
  'spine-load-share': {
    formula: 'mean over both straps of −u·(d rear + d front); u up the torso line, d directions of length 1',
    sign: 'Plus when the spine is pressed together.',
    source:
      'Statics of a strap without friction over a round support: the tension is the same in both legs; the front leg is the last straight piece before the buckle. Friction on a real body is left out.',
  },
} as const satisfies Partial<Record<QuantityId, QuantityFormula>>

const LAP_FORMULAS = {
  'lap-angle': {
    formula: 'atan2(zH − zE, xE − xH)',
    sign: '0° level, 90° when the anchor is straight below the hip point.',
    source:
      'Side-view line to the nearest contact of the belt as in 49 CFR 571.210 S4.3.1.1(a) and S4.3.1.2 (read in the document); the occupant’s hip point stands for the design reference point.',
  },
  'lap-run-angle': {
    formula: 'atan2(zQ − zE, xE − xQ); Q the front contact with the pelvis',
    sign: '0° level, 90° upright.',
    source: OURS,
  },
  'lap-shifted-angle': {
    formula: 'atan2(zP − zE, xE − xP); P is 64 mm ahead of and 10 mm above H',
    sign: '0° level, 90° upright.',
    source: '49 CFR 571.210 S4.3.1.1(b), “64 mm forward of and 10 mm above” (read in the document).',
  },
  'lap-spacing': {
    formula: 'yR − yL',
    sign: EXCHANGED_SIGN,
    source: 'Our definition: hole to hole, or along the bar between the middles of the webbing.',
  },
  'lap-mirror': MIRROR_FORMULA,
  'lap-off-centre': {
    formula: '|yA − yH|, minus when the anchor is on the other side of the seat',
    sign: 'Plus on the strap’s own side.',
    source: 'Our definition; the middle plane of the seat runs through the hip point.',
  },
  'lap-over-asis': {
    formula: 'height of the line EQ at xB, minus zB; where B is ahead of Q: zQ − zB',
    sign: 'Plus when the strap lies above the front hip bone, on the belly; minus when below it.',
    source: 'Our definition; middle of the webbing, straight line through two points.',
  },
} as const satisfies Partial<Record<QuantityId, QuantityFormula>>

const OTHER_FORMULAS = {
  'sub-to-chest': {
    formula:
      'atan2(xE − xT, zT − zE) − atan2(xK − xC, zC − zK); K the buckle, C where a straight line from it touches the shoulder',
    sign: 'Plus when the strap runs rearward of the chest line carried on downward.',
    source:
      'The line along the shoulder straps from chest to buckle: Formula SAE Rules, 2026 V1, T.2.1 f (read in the document). It is taken straight, whether or not the chest bends the straps.',
  },
  'sub-to-vertical': {
    formula: 'atan2(xE − xT, zT − zE)',
    sign: 'Plus when the anchor is rearward of the body contact, 0° straight down.',
    source: OURS,
  },
  'sub-spacing': {
    formula: 'yR − yL',
    sign: EXCHANGED_SIGN,
    source: 'Our definition: hole to hole, or along the bar between the middles of the webbing.',
  },
  'sub-mirror': MIRROR_FORMULA,
  'slot-bend': {
    formula:
      'turn from the piece before the first edge of the slot to the piece after the last; in a side wall the turn in space, else in side view or, where more than an edge straight across the seat holds the strap, seen from above (cushion: from behind), whichever is larger',
    sign: 'Never negative; 0° passes clean.',
    source: 'Our definition. A shell with a thickness has two edges, one on each face.',
  },
  'wrap-square': {
    formula: 'acos|d·a|; d along the strap, a along the bar, both of length 1',
    sign: '0° along the bar to 90° square to it.',
    source: 'Our definition; angle between two directions in space.',
  },
  'tab-twist': {
    formula: 'asin|d·n|; d along the strap, n square to the tab, both of length 1',
    sign: 'Never negative; 0° in line with the tab.',
    source: 'Our definition; angle between a line and a plane in space.',
  },
  'shank-angle': {
    formula: 'acos(d·s); d along the strap, s along the shank from its thread to the eye, both of length 1',
    sign: '0° straight out of the thread, 90° square to it, up to 180°.',
    source: 'Our definition; angle between two directions in space.',
  },
  'shoulder-junction': {
    formula: 'xJ − xN; J the junction, N the rearmost point of the shoulder arc',
    sign: 'Plus when the junction lies behind the neck, minus when it lies ahead of N.',
    source:
      'Australian national Schedule I asks for the distance behind the neck (read); the back of the shoulder arc stands for the neck, which is ours.',
  },
  'adjuster-clearance': {
    formula:
      'least distance along the strap from an end of the adjuster’s body to N: a slot or edge it runs over, where it lies on the body, or the buckle',
    sign: 'Minus when the body of the adjuster overlaps such a place, or reaches beyond the strap’s end.',
    source:
      'Common practice, no source, that no adjuster lies in a slot or under the hip; the measure is ours.',
  },
  'tube-clearance': {
    formula:
      '|PN| in space − half the tube’s outside diameter; P on a straight piece of the strap, N on the tube’s centre line, where they are nearest',
    sign: 'Minus when the strap would pass through the tube.',
    source:
      'Our definition: shortest distance of two straight pieces in space. The strap is taken as a line, the tube it is fixed to is left out.',
  },
  'helmet-clearance': {
    formula: '|MN| − radius of the helmet − half the tube’s outside diameter',
    sign: 'Minus when helmet and tube overlap.',
    source: 'Our definition; the helmet is taken as a ball, at rest.',
  },
  'body-clearance': {
    formula: '|MN| − radius of the body there − half the tube’s outside diameter',
    sign: 'Minus when a tube would be in the person or in a strap on the person.',
    source:
      'Our definition; the person is what surely is body: pelvis, belly, chest, shoulders and thighs as pieces round about a straight line, without arms, shanks and head.',
  },
  'strap-length': {
    formula: 'path to the buckle + adjuster tail; for a wrap + π × outside diameter + the part woven back',
    sign: NO_SIGN,
    source: 'Common practice, no source; tail and woven part as typed under Belt.',
  },
} as const satisfies Partial<Record<QuantityId, QuantityFormula>>

const FORMULAS: Readonly<Record<QuantityId, QuantityFormula>> = {
  ...SHOULDER_FORMULAS,
  ...LAP_FORMULAS,
  ...OTHER_FORMULAS,
}

/** Formula, sign and source of a quantity, for beside its drawing. */
export const quantityFormula = (id: QuantityId): QuantityFormula => FORMULAS[id]

/** How a figure is looked at, as its caption. */
export const viewCaption = (view: ExplainView): string => {
  switch (view) {
    case 'side':
      return 'Side elevation, front at the left'
    case 'top':
      return 'From above, front at the left'
    case 'behind':
      return 'From behind, the occupant’s right at the right'
    case 'true':
      return 'Turned so that what is measured has its true size'
    case 'strip':
      return 'Laid out straight'
    case 'forces':
      return 'Side elevation with the pull of both legs, mean of the two straps'
  }
}
