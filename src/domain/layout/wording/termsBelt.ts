import type { Term } from './term'

/** Words of the belt. */
export const BELT_TERMS = {
  'shoulder-strap': {
    word: 'Shoulder strap',
    says: 'One of the two straps that go from the buckle up over the shoulders and back to the harness bar or its tabs.',
    watch:
      'They hold the chest. They should leave the shoulders about square to the torso line and not run outward.',
    from: 'trade',
  },
  'lap-strap': {
    word: 'Lap strap',
    says: 'One of the two straps that go from the buckle across the pelvis down to the anchors beside the seat.',
    watch: 'They hold the pelvis by its bones, low, and have to stay there when everything else is loose.',
    from: 'trade',
  },
  'sub-strap': {
    word: 'Anti-submarine strap',
    says: 'A strap from the buckle down between or under the thighs. It keeps the buckle low and the pelvis from sliding under the lap strap.',
    watch: 'Its anchor lies below or behind the groin, never ahead of it.',
    from: 'trade',
  },
  arrangement: {
    word: 'Arrangement',
    says: 'How many straps come together: four, or five with one centre strap, six with two thigh straps, seven with both.',
    watch: 'With four nothing holds the lap strap down (common practice, no source).',
    from: 'trade',
  },
  buckle: {
    word: 'Buckle',
    says: 'Where all straps meet on the lower belly and are opened with one movement.',
    watch: 'It moves with the straps that are pulled tight. Its place is computed from them.',
    from: 'trade',
  },
  'latch-and-link': {
    word: 'Latch-and-link buckle',
    says: 'A lever that closes over stacked links of the straps.',
    watch: 'It can be seen whether it is closed, and it bears mud and dust (common practice, no source).',
    from: 'trade',
  },
  'rotary-cam': {
    word: 'Rotary-cam buckle',
    says: 'A round housing that tongues click into and that is opened by a turn.',
    watch: 'Dust and mud can clog it so that a tongue does not lock (common practice, no source).',
    from: 'trade',
  },
  adjuster: {
    word: 'Adjuster',
    says: 'The slide on a strap by which it is pulled tight. Its spare end is the tail.',
    watch:
      'It must not lie in a slot, over an edge or under the hip, or it jams and slips (common practice, no source).',
    from: 'trade',
  },
  'free-length': {
    word: 'Free length',
    says: 'The length of webbing between where it leaves the body and where it is fixed.',
    watch: 'Webbing stretches by a share of its length: long straps let the body travel further.',
    from: 'trade',
    source:
      '49 CFR 571.209 S4.2(c) allows torso webbing to grow by up to 40 % at 11 120 N (read in the document); that is an upper limit, not a usual value.',
  },
  'head-and-neck-restraint': {
    word: 'Head-and-neck restraint',
    says: 'A collar worn on the shoulders and tied to the helmet, so that the neck does not have to hold the head when the chest is stopped.',
    watch:
      'The shoulder straps hold it down. Its own instructions say at which angle and how far apart they run.',
    from: 'trade',
  },
} as const satisfies Readonly<Record<string, Term>>
