import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import { BODY_MEASURES, type Occupant } from '../../body/occupant'
import { type Anchor, anchorForm, type Mount } from '../../straps/anchor'
import type { Seat, Slot } from '../../straps/seat'
import { type Belt, diagonalShoulder, STRAP_FAMILIES, STRAP_IDS, thighStraps } from '../../straps/strap'
import type { Place } from '../document/layout'
import type { FieldOf, FieldValue, PartField, PartValue } from './comparedPart'

type Unit = Extract<FieldValue, { kind: 'number' }>['unit']

/** A number of a part; nothing where the file says none, which is not the same as 0. */
const number = (
  field: PartField,
  value: number | undefined,
  unit: Unit = 'mm',
  of: FieldOf = null,
): readonly PartValue[] =>
  value === undefined ? [] : [{ field, of, value: { kind: 'number', value, unit } }]

const word = (field: PartField, text: string | undefined, of: FieldOf = null): readonly PartValue[] =>
  text === undefined ? [] : [{ field, of, value: { kind: 'word', word: text } }]

const flag = (field: PartField, isSo: boolean, of: FieldOf = null): readonly PartValue[] =>
  word(field, isSo ? 'yes' : 'no', of)

const position = ({ xMm, yMm, zMm }: PointMm, of: FieldOf = null): readonly PartValue[] => [
  ...number('x', xMm, 'mm', of),
  ...number('y', yMm, 'mm', of),
  ...number('z', zMm, 'mm', of),
]

const outline = (field: PartField, points: readonly object[]): readonly PartValue[] => [
  { field, of: null, value: { kind: 'outline', points: points.length, text: pointsText(points) } },
]

/** The coordinates in the order of their names: a file may have them in any. */
const pointsText = (points: readonly object[]): string =>
  JSON.stringify(points.map((point) => Object.entries(point).toSorted(([a], [b]) => (a < b ? -1 : 1))))

const mountValues = (mount: Mount): readonly PartValue[] => {
  switch (mount.kind) {
    case 'tab':
      return [
        ...number('plan', mount.planDeg, 'deg'),
        ...number('lean', mount.leanDeg, 'deg'),
        ...number('thickness', mount.thicknessMm),
        ...number('hole', mount.holeDiameterMm),
        ...number('width', mount.widthMm),
        ...number('edge', mount.edgeDistanceMm),
        ...number('gap', mount.gapMm),
        ...word('shear', mount.shear),
      ]
    case 'wrap':
      return [...word('over', mount.over), ...flag('guide-hoops', mount.guideHoops)]
    case 'eye':
      return [
        ...number('plan', mount.planDeg, 'deg'),
        ...number('rise', mount.riseDeg, 'deg'),
        ...number('thread', mount.threadDiameterMm),
        ...number('eye', mount.eyeDiameterMm),
      ]
  }
}

/** Everything about an anchor; `tubeWord` names the tube that carries it alike in every variant, empty: none. */
export const anchorValues = ({ mount }: Anchor, tubeWord: string): readonly PartValue[] => [
  ...position(mount.point),
  ...word('form', anchorForm(mount)),
  ...word('on-tube', tubeWord),
  ...mountValues(mount),
]

export const tubeValues = (tube: Tube): readonly PartValue[] => [
  ...word('name', tube.name),
  ...word('role', tube.role),
  ...number('outside-diameter', tube.outsideDiameterMm),
  ...number('wall', tube.wallMm),
  ...tube.points.flatMap((point, index) => position(point, index + 1)),
]

export const seatValues = (seat: Seat): readonly PartValue[] => [
  ...position(seat.hipPoint),
  ...number('hip-height', seat.hipHeightMm),
  ...number('recline', seat.reclineDeg, 'deg'),
  ...number('slide-forward', seat.slide.forwardMm),
  ...number('slide-rearward', seat.slide.rearwardMm),
  ...number('most-upright', seat.reclineRange.uprightDeg, 'deg'),
  ...number('most-reclined', seat.reclineRange.reclinedDeg, 'deg'),
  ...number('rim-x', seat.backrestRim.xMm),
  ...number('rim-z', seat.backrestRim.zMm),
  ...number('shell-thickness', seat.shellThicknessMm ?? 0),
  ...outline('side-outline', seat.sideOutline),
  ...outline('top-outline', seat.topOutline),
]

export const slotValues = (slot: Slot): readonly PartValue[] => [
  ...word('slot-straps', STRAP_IDS.filter((strap) => slot.straps.includes(strap)).join(' ')),
  ...word('face', slot.face),
  ...position(slot.centre),
  ...number('length', slot.lengthMm),
  ...number('height', slot.heightMm),
  ...number('turn', slot.turnDeg, 'deg'),
]

export const beltValues = (belt: Belt): readonly PartValue[] => [
  ...number('arrangement', belt.arrangement, 'count'),
  ...word('diagonal', belt.arrangement === 3 ? diagonalShoulder(belt) : undefined),
  ...word('thigh-straps', thighStraps(belt) ?? undefined),
  ...number('shoulder-tail', belt.shoulderTailMm),
  ...STRAP_FAMILIES.flatMap((family) => [
    ...number('webbing', belt.webbingMm[family], 'mm', family),
    ...number('adjuster-place', belt.adjusters?.[family]?.fromAnchorMm, 'mm', family),
    ...number('adjuster-length', belt.adjusters?.[family]?.lengthMm, 'mm', family),
    ...number('bolt-diameter', belt.hardware?.[family]?.boltDiameterMm, 'mm', family),
    ...word('bolt-grade', belt.hardware?.[family]?.grade, family),
    ...number('torque', belt.hardware?.[family]?.torqueNm, 'Nm', family),
    ...word('bolt-source', belt.hardware?.[family]?.source, family),
  ]),
  ...word('material', belt.material),
  ...word('buckle', belt.buckle),
  ...word('lap-adjuster', belt.lapAdjuster),
  ...flag('head-and-neck', belt.headAndNeckRestraint),
  ...number('adjuster-tail', belt.adjusterTailMm),
  ...number('wrap-return', belt.wrapReturnMm),
]

export const occupantValues = (occupant: Occupant): readonly PartValue[] => [
  ...word('name', occupant.name),
  ...word('sex', occupant.sex),
  ...number('stature', occupant.statureMm),
  ...number('mass', occupant.massKg, 'kg'),
  ...BODY_MEASURES.flatMap((measure) =>
    number('measured', occupant.measured[measure], measure.endsWith('Deg') ? 'deg' : 'mm', measure),
  ),
]

/** The place itself: its name and which pairs move as one, which decides how much room a finding has. */
export const placeValues = ({ name, mirrored }: Place): readonly PartValue[] => [
  ...word('name', name),
  ...STRAP_FAMILIES.flatMap((family) => flag('mirrored', mirrored[family], family)),
]
