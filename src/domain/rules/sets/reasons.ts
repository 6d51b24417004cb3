/** Why the rules ask for what they ask, in one plain sentence each; the same reason stands behind many documents. */
export const REASON = {
  shoulderFall:
    'A strap that falls too steeply presses the spine together; one that rises too much holds the shoulders late.',
  shoulderHeight:
    'An anchor above the shoulder lets the strap lift off; one far below it presses the spine together.',
  shoulderPlan: 'A strap that runs off too far sideways slips along the shoulder or presses on the neck.',
  shoulderSpacing: 'Too close, the straps press on the neck; too wide, they slip off the shoulders.',
  shoulderLength: 'Webbing stretches with its length, and stretch is how far head and chest travel.',
  lapAngle:
    'A flatter strap lets the pelvis slide under it and rides up on to the belly; a steeper one lets the pelvis slide forward.',
  lapLow: 'Bone can carry the strap; the belly cannot, and what lies behind it is hurt.',
  lapSpacing: 'Closer together the anchors pinch the pelvis and stop holding it sideways.',
  sub: 'Straps that pull down or back keep the pelvis from sliding under the lap strap.',
  webbing: 'Narrow webbing loads the body along a line instead of a band.',
  wrap: 'A strap that meets the bar aslant bunches to one edge, creeps along the bar and starts to tear.',
  eye: 'An eye pulled sideways bends and breaks at its thread.',
  strength: 'An anchorage that tears out or bends away holds nobody.',
  age: 'Webbing loses strength with age, sun and dirt.',
  joined: 'A joined strap presses the neck and holds one shoulder less.',
  edge: 'Loaded webbing is cut by an edge at once.',
  points: 'With four points nothing holds the lap strap down, and it rides up on to the belly.',
  neck: 'Without it the head goes on when the shoulders are held, and the neck carries it alone.',
  throughSeat: 'A strap led over the side of the seat is longer, moves about and lies in the wrong place.',
} as const
