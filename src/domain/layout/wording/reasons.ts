/** Why the trade does something, in its own words. */
export interface Reason {
  readonly title: string
  readonly says: readonly string[]
  /** Where each claim is from and how it reached us. */
  readonly sources: readonly string[]
  /** What may be tried, in words beside the slider; left out where nothing moves. */
  readonly tries?: string
}

const PRACTICE = 'Common practice, no source.'

const REASONS = {
  square: {
    title: 'Why shoulder straps leave square to the spine',
    says: [
      'A tight strap pulls equally on both sides of the shoulder it runs over. Whatever of that pull runs along the torso line presses the spine together.',
      'The part to the buckle always pulls down. A bar that is too low makes the part behind pull down too; a bar that is much too high lets the strap lift off the shoulder and hold it late. Square to the spine the part behind neither presses nor lifts.',
      'A head-and-neck restraint is held down by the straps: they then fall a little more.',
    ],
    sources: [
      'The share of the tension: statics of a strap without friction over a round support, derived here. A real shoulder has friction, which is left out.',
      'Square to the spine, and about 10° more with a head-and-neck restraint: common practice, no source.',
      'An aviation circular calls 30° the steepest shoulder strap that still restrains (AC 21-34, quoted second-hand).',
    ],
    tries: 'Move the harness bar up and down.',
  },
  pelvis: {
    title: 'Why the lap strap lies on the pelvis and not on the belly',
    says: [
      'The pelvis is a bowl of bone with a corner at the front on each side. Below those corners the strap hooks on to bone. Above them there is only belly, and what lies behind it is soft.',
      'A flat strap slides up over the corners when the body slumps and moves forward: that is called submarining. A steeper one stays below them, until it is so steep that the pelvis first travels forward.',
      'Nobody here can say how much stronger bone is: published tests of belly and bone were made in different ways and their forces overlap.',
    ],
    sources: [
      'The flatter the lap strap, the more the pelvis slides under it, over 20° to 75°: MacLaughlin, Sullivan, O’Connor 1989, sled tests (abstract read). It names no single limit.',
      'A belt placed above the hip bones injured the belly in 3 of 14 tests, at peak forces of 6.0 to 6.8 kN: Steffan et al., about 2002 (abstract read).',
      'A tab 45° to 60° below and behind the hip: common practice, no source.',
    ],
    tries: 'Move the lap tabs fore and aft.',
  },
  short: {
    title: 'Why straps are kept short',
    says: [
      'Webbing grows by a share of its length. Twice the strap is twice the stretch, and stretch is how far chest and head travel before they are held.',
      'What is behind the seat helps nobody: a bar close behind the shoulders is the cheapest way to lose less.',
    ],
    sources: [
      'Road-car torso webbing may grow by up to 40 % at 11,120 N: 49 CFR 571.209 S4.2(c) (read in the document). A limit, not a usual value.',
      'A crash-seat lap belt may grow by no more than 10 % up to 4,000 lbf, which is 17,793 N: MIL-S-85510(AS) (read in the document). The two are measured at different loads and on different things.',
      'Keep free webbing short: common practice, no source.',
    ],
    tries: 'Move the harness bar to the rear.',
  },
  pull: {
    title: 'Why a tab points along the pull, and why its end must turn',
    says: [
      'A plate is strong in its own plane and weak across it, as a ruler is. A pull out of the plane bends it at its foot, and bending stress grows with how far the hole stands off.',
      'The body moves and the line of pull turns with it. An end that can turn on its bolt follows; one that cannot loads the webbing along one edge, where it starts to tear.',
    ],
    sources: [
      'The ratio of stresses: tension and bending of a plate added up, elementary beam theory, derived here for a hole 25 mm above the weld in a plate 5 mm thick. It explains and checks nothing: no strength of your tab is computed.',
      'A tab “aligned such that it is not put in bending”: student racing rules of 2021, T.2.4 (read in the document).',
      'Every end must be able to turn; webbing loaded on one edge tears on: common practice, no source.',
    ],
    tries: 'Turn the pull out of the plate’s plane.',
  },
  shear: {
    title: 'Why it matters how many plates hold a bolt',
    says: [
      'Held by one plate the bolt is cut across in one place and bent over like a nail pulled from the side. Held by a plate on each side two places share the cutting and there is little left to bend it.',
      'If it has to be one plate: fitting hard against it, a short bolt, and a smooth shank where it is cut, not the thread.',
    ],
    sources: [
      'Bending of the bolt, M = P·(t₁/2 + gap + t₂/2) and M = P/2·(t₁/2 + gap + t₂/4): Niu, Airframe Stress Analysis and Sizing, eq. 9.8.8 and 9.8.9 (read).',
      '“Double shear attachments are preferred”: student racing rules of 2021, T.2.4 (read in the document).',
    ],
    tries: 'Let the fitting stand off from the plate.',
  },
  sub: {
    title: 'Why straps between the thighs go down or back, never forward',
    says: [
      'Tightening the shoulder straps pulls the buckle up, and the lap strap with it, towards the belly. The strap from below holds the buckle down.',
      'Anchored below or behind the groin it also pulls the pelvis back into the seat. Anchored ahead it would pull the pelvis forward, the way it must not go.',
    ],
    sources: [
      'Centre strap along the line of the chest; thigh straps behind the groin: common practice, no source. Student racing rules of 2026 give 0° to 20° rearward (read in the document).',
      'Why the pelvis slides: MacLaughlin, Sullivan, O’Connor 1989 (abstract read).',
    ],
    tries: 'Move the tabs under the thighs fore and aft.',
  },
  measure: {
    title: 'Why the person is measured',
    says: [
      'The bar stays where it is welded, and shoulders do not. The same bar pulls down on a short back and up on a long one.',
      'Sizes do not come in sets either: people of one stature differ in the length of their backs. A car checked for a small woman and a large man does not fit everybody between them. Measure who will sit there.',
    ],
    sources: [
      'Shoulder and hip heights by stature: regressions on the 1988 and 2012 surveys of soldiers, ANSUR I and II (public data, worked out here; see the body folder’s README for how sure they are).',
    ],
    tries: 'Change the stature of the person in the seat.',
  },
  age: {
    title: 'Why belts age',
    says: [
      'Webbing is thread. Sun, dirt, rubbing and damp cut threads that cannot be seen, and nothing gives them back. Test rules for road belts therefore ask how much strength is left after each of them.',
      'Event rules set an end date instead of a test, because a test would break the belt. After a crash a belt has done its work, whatever its date.',
    ],
    sources: [
      'Strength to be kept after rot (85 %), rubbing (75 %) and light (60 %): 49 CFR 571.209 S4.2(d) to (f) (read in the document). These are road belts; no such figures for racing belts were found.',
      'End dates: the rules named under Belt care, each with its own source.',
    ],
  },
  straight: {
    title: 'Why the harness bar is straight, short between supports and fixed at both ends',
    says: [
      'A straight tube carries the straps by bending. A bent one also straightens under load, which gives the straps length just when they must not have it, and wrapped straps creep along it.',
      'The span counts three times over: a bar of twice the span moves eight times as far under the same pull. A brace in the middle does more than a thicker tube.',
    ],
    sources: [
      'Movement of the middle, P·L³/(48·E·I): bar on two supports, load in the middle (read in a public beam table). Ends welded to a stiff hoop move less.',
      'A bent shoulder bar needs braces at its bends: Formula SAE Rules 2026, F.6 (read in the document).',
      `A bar without bends: ${PRACTICE.toLowerCase()}`,
    ],
    tries: 'Change the span between the supports.',
  },
} as const satisfies Readonly<Record<string, Reason>>

export type ReasonId = keyof typeof REASONS

/** In the order of the guide. */
export const REASON_IDS: readonly ReasonId[] = Object.keys(REASONS) as ReasonId[]

export const reasonOf = (id: ReasonId): Reason => REASONS[id]
