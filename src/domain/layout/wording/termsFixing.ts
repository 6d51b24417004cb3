import type { Term } from './term'

/** Words of what a strap is fixed by, and of welding it. */
export const FIXING_TERMS = {
  anchor: {
    word: 'Anchor',
    says: 'Where a strap is fixed to the car: a tab, a clevis, an insert, an eye bolt or a wrap.',
    watch:
      'For an angle the last thing the strap touches before the body counts, which may be a slot edge and not the anchor.',
    from: 'trade',
    source: '49 CFR 571.210 S4.3.1 measures from the nearest contact of the belt (read in the document).',
  },
  tab: {
    word: 'Tab',
    says: 'A plate welded to a tube, with a hole that the strap’s end fitting is bolted to.',
    watch: 'It is strong in its own plane only. It has to point along the strap.',
    from: 'trade',
  },
  clevis: {
    word: 'Clevis',
    says: 'Two plates side by side with the end fitting between them and the bolt through all three.',
    watch: 'The bolt is held on both sides of the fitting, so it does not bend over.',
    from: 'trade',
  },
  insert: {
    word: 'Welded insert',
    says: 'A threaded bush welded into or on to a tube, for a bolt or an eye.',
    watch: 'The strap has to pull across the bolt or along the eye as its maker says.',
    from: 'trade',
  },
  'eye-bolt': {
    word: 'Eye bolt',
    says: 'A bolt with a ring for a head, which the strap’s end fitting clips into.',
    watch: 'It is strong along its shank. Pulled sideways it bends at the thread.',
    from: 'trade',
  },
  wrap: {
    word: 'Wrap',
    says: 'The strap is looped round the bar and led back through a three-bar slide, without any tab.',
    watch: 'It has to meet the bar squarely, and something has to keep it from creeping sideways.',
    from: 'trade',
  },
  'three-bar-slide': {
    word: 'Three-bar slide',
    says: 'A flat buckle with three bars. The webbing is woven over and under them and then back, so that it pinches itself.',
    watch:
      'The end has to be woven back as the belt’s maker shows and stand out by a hand’s width (common practice, no source).',
    from: 'trade',
  },
  'guide-hoop': {
    word: 'Guide hoop',
    says: 'A small round hoop welded to the bar beside a wrapped strap. It keeps the strap from sliding sideways.',
    watch: 'Both sides of each strap, rounded, and close enough that the webbing cannot fold.',
    from: 'trade',
  },
  'single-shear': {
    word: 'Single shear',
    says: 'The bolt is held on one side of the fitting only: it is cut across once, and bent besides.',
    watch: 'The longer the bolt stands out, the more it bends. Fitting hard against the plate.',
    from: 'trade',
    source:
      'Bending of a pin in one shear plane, M = P · (t₁/2 + gap + t₂/2): Niu, Airframe Stress Analysis and Sizing, eq. 9.8.8 (read).',
  },
  'double-shear': {
    word: 'Double shear',
    says: 'The bolt is held on both sides of the fitting: two places share the load and it hardly bends.',
    watch: 'Both plates have to be equally stiff, or one carries all.',
    from: 'trade',
    source:
      '“Double shear attachments are preferred”: Formula SAE Rules, T.2.4 (2021 text, read in the document).',
  },
  'shoulder-bolt': {
    word: 'Shoulder bolt',
    says: 'A bolt with a smooth, exact shank longer than the fitting is thick, so that it can be tightened and the fitting still turns.',
    watch: 'Its thread is thinner than its shank: it must not be pulled along its axis.',
    from: 'trade',
    source:
      'ASME B18.3 and ISO 7379 pair each shoulder with a thread one or two sizes smaller (tables read second-hand).',
  },
  'line-of-pull': {
    word: 'Line of pull',
    says: 'The direction in which the tight strap pulls on its anchor: along its first straight piece.',
    watch:
      'The tab’s plane has to hold this line. What turns out of it bends the plate and tears the webbing’s edge first.',
    from: 'trade',
  },
  standoff: {
    word: 'Standoff',
    says: 'The distance from the tube’s surface to the middle of the tab’s hole.',
    watch:
      'Long enough for the fitting to turn freely, and no longer: the further out, the more a side pull bends the tab.',
    from: 'trade',
  },
  coping: {
    word: 'Coping',
    says: 'The hollow cut into a plate’s or tube’s end so that it fits round the tube it is welded to, without a gap.',
    watch: 'A gap is bridged by weld alone. The templates give the cut to true size.',
    from: 'trade',
  },
  'tape-check': {
    word: 'Tape check',
    says: 'A distance between two points that a tape can be held to, computed beforehand and measured after tacking.',
    watch: 'Three or more tapes to points that lie in different directions tell where a hole really is.',
    from: 'here',
  },
} as const satisfies Readonly<Record<string, Term>>
