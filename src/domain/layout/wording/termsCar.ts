import type { Term } from './term'

/** Words of the drawing, the seat and the person. */
export const CAR_TERMS = {
  'side-elevation': {
    word: 'Side elevation',
    says: 'The car seen squarely from its left side, front at the left: fore and aft runs across, height runs up.',
    watch:
      'Only what lies fore, aft, up or down has its true length here; what leans sideways looks shorter.',
    from: 'trade',
  },
  'top-elevation': {
    word: 'Top elevation',
    says: 'The car seen from straight above, front at the left, the occupant’s right side up.',
    watch: 'It shares the fore-and-aft line with the side elevation: both move together.',
    from: 'trade',
  },
  datum: {
    word: 'Datum',
    says: 'The one point of the car that every position is measured from: x to the rear, y to the occupant’s right, z up.',
    watch: 'Choose something a tape can be hooked to and that will still be there after welding.',
    from: 'trade',
    source: 'Axes as in ISO 4130 (from memory).',
  },
  'hip-point': {
    word: 'Hip point',
    says: 'Where the person’s hip joints are when seated, in the middle plane of the seat: the leg turns about it.',
    watch:
      'It belongs to seat, cushion and person together. Measure it with the person in the seat, not on the empty shell.',
    from: 'trade',
  },
  'torso-line': {
    word: 'Torso line',
    says: 'The straight line of the trunk from the hip point up between the shoulders: it stands for the spine.',
    watch: 'A slumped person has another line than the backrest.',
    from: 'trade',
  },
  recline: {
    word: 'Recline',
    says: 'How far the torso line leans back from upright, in degrees.',
    watch: 'When a seat reclines, the shoulder straps have to follow, or they end up pressing on the spine.',
    from: 'trade',
  },
  'shoulder-point': {
    word: 'Shoulder point',
    says: 'The top of the shoulder where the strap lies, left and right.',
    watch: 'It rises and falls with the person. A bar right for a tall one is high for a short one.',
    from: 'trade',
  },
  'front-hip-bone': {
    word: 'Front hip bone',
    says: 'The bony corner at the front of the pelvis that a finger finds just below the waist; one on each side.',
    watch: 'The lap strap has to lie below it and against the thighs’ roots. Above it there is only belly.',
    from: 'trade',
  },
  shell: {
    word: 'Seat shell',
    says: 'The stiff body of the seat that holds the person. Straps pass through its slots or over its rim.',
    watch: 'A strap that touches the shell anywhere but where it is meant to is bent, and may be cut.',
    from: 'trade',
  },
  rim: {
    word: 'Backrest rim',
    says: 'The upper edge of the backrest, over which shoulder straps run where the seat has no slots for them.',
    watch: 'A rim above the straight line lifts the strap; one far below it does not guide the strap at all.',
    from: 'trade',
  },
  slide: {
    word: 'Slide',
    says: 'How far the seat moves fore and aft on its rails from where it is drawn.',
    watch: 'Every strap is checked at both ends of the slide, because anchors stay where they are.',
    from: 'trade',
  },
  'strap-slot': {
    word: 'Strap slot',
    says: 'An opening in the shell that a strap passes through.',
    watch:
      'The strap should pass without touching an edge. If it must touch, the edge has to be round and the slot wide enough.',
    from: 'trade',
  },
  'harness-bar': {
    word: 'Harness bar',
    says: 'A straight tube across the car behind the seat that the shoulder straps go to, by wrap or by tabs.',
    watch:
      'Its height decides how the straps leave the shoulders. It has to be straight and held at both ends.',
    from: 'trade',
  },
} as const satisfies Readonly<Record<string, Term>>
