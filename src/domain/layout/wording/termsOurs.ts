import type { Term } from './term'

/** Words that have their meaning only here. */
export const OUR_TERMS = {
  layout: {
    word: 'Layout',
    says: 'The document: everything about one car’s restraint mounting, its tubes, seats, people, belts and anchors.',
    watch: 'It is kept on this device after every step. Save it to a file to have it elsewhere.',
    from: 'here',
  },
  place: {
    word: 'Place',
    says: 'One seat position in the car, with the people who sit there, their belt and its anchors.',
    watch: 'A two-seater has two, and each is checked by itself.',
    from: 'here',
  },
  sitting: {
    word: 'Sitting',
    says: 'One person in one position of the seat at one place. Every rule is checked over all sittings.',
    watch: 'The worst sitting decides. It is named beside each finding.',
    from: 'here',
  },
  'rule-set': {
    word: 'Rule set',
    says: 'A named list of limits with their sources. One is chosen for the layout; own rules can be added.',
    watch:
      'Documents disagree. Look at which one was used, and whether its figures were read or only quoted.',
    from: 'here',
  },
  finding: {
    word: 'Finding',
    says: 'One rule held against one strap or anchor over all sittings: the value, the limit and where it stands.',
    watch: 'Unchecked is never the same as clear.',
    from: 'here',
  },
  room: {
    word: 'Room',
    says: 'How far a part can still move in the drawing before the finding flips. With a minus it is how far it has to move.',
    watch: 'Less room than your welding is true to is too little.',
    from: 'here',
  },
  zone: {
    word: 'Zone',
    says: 'Where an anchor may lie, everything else as drawn, so that all its rules are kept in all sittings.',
    watch: 'Move something else and the zone changes too.',
    from: 'here',
  },
  remedy: {
    word: 'Remedy',
    says: 'The smallest change that clears a finding, worked out and checked, such as “bar up 22 mm”.',
    watch: 'It says what it would break elsewhere. None is carried out before you say so.',
    from: 'here',
  },
  tolerance: {
    word: 'Tolerance',
    says: 'What welding and measuring may be off by. Findings then say whether that alone could break them.',
    watch: 'Type what your shop really reaches, not what it aims at.',
    from: 'here',
  },
  'mount-sheet': {
    word: 'Mount sheet',
    says: 'The page for the weld shop: every anchor’s place from the datum, its turn, its hardware and how to check it.',
    watch: 'Print it at true size and measure the scale bar before anything is cut from a template.',
    from: 'here',
  },
  'as-welded': {
    word: 'As welded',
    says: 'What was really welded, measured in and checked with the same rules as the plan.',
    watch: 'The plan stays as it was. A signed record is never changed.',
    from: 'here',
  },
  variant: {
    word: 'Variant',
    says: 'Another way to build the same car, kept beside the drawn one to compare them.',
    watch: 'The papers show the drawn one alone.',
    from: 'here',
  },
} as const satisfies Readonly<Record<string, Term>>
