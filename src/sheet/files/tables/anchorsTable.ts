import type { Layout } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { anchorName, placeName, strapName, tubeName } from '../../../domain/layout/wording/names'
import type { AnchorRow } from '../../../domain/shop/anchorRows'
import {
  type EyeMount,
  type Mount,
  tabForm,
  type TabMount,
  type WrapMount,
} from '../../../domain/straps/anchor'
import { tabSize } from '../../../domain/straps/tabSize'
import { numberedAnchors } from '../../mount/table/anchorTable'
import type { CsvCell, CsvTable } from '../csv'
import { column, lengthColumns, pointColumns, tableOf } from './columns'

interface AnchorInPlace {
  readonly place: string
  readonly row: AnchorRow
}

const ofTab =
  <Value extends CsvCell>(value: (mount: TabMount) => Value) =>
  ({ row }: AnchorInPlace): Value | null =>
    row.anchor.mount.kind === 'tab' ? value(row.anchor.mount) : null

const ofWrap =
  <Value extends CsvCell>(value: (mount: WrapMount) => Value) =>
  ({ row }: AnchorInPlace): Value | null =>
    row.anchor.mount.kind === 'wrap' ? value(row.anchor.mount) : null

const ofEye =
  <Value extends CsvCell>(value: (mount: EyeMount) => Value) =>
  ({ row }: AnchorInPlace): Value | null =>
    row.anchor.mount.kind === 'eye' ? value(row.anchor.mount) : null

const planDeg = (mount: Mount): number | null => (mount.kind === 'wrap' ? null : mount.planDeg)

/** What x, y and z are the position of. */
const POSITION_WORDS = {
  tab: 'centre of the hole, middle of the plate',
  wrap: 'centre line of the tube, middle of the webbing',
  eye: 'centre of the eye',
} as const

/** Every anchor with its item number on the mount sheet, where it is, what it hangs on, how it is made and which way it is pulled. */
export const anchorsTable = (layout: Layout, evaluation: CheckedEvaluation): CsvTable => {
  const anchors = numberedAnchors(layout, evaluation).flatMap(({ place, rows }) =>
    rows.map((row): AnchorInPlace => ({ place: placeName(place.id, layout), row })),
  )
  const columns = [
    ...column<AnchorInPlace>('item', ({ row }) => row.itemNumber),
    ...column<AnchorInPlace>('place', ({ place }) => place),
    ...column<AnchorInPlace>('anchor', ({ row }) => anchorName(row.anchor)),
    ...column<AnchorInPlace>('strap', ({ row }) => strapName(row.anchor.strap)),
    ...column<AnchorInPlace>('same as item', ({ row }) => row.sameAsItem),
    ...column<AnchorInPlace>('position of', ({ row }) => POSITION_WORDS[row.anchor.mount.kind]),
    ...pointColumns<AnchorInPlace>('', ({ row }) => row.anchor.mount.point),
    ...column<AnchorInPlace>('on tube', ({ row }) =>
      row.tube === null ? null : tubeName(row.tube.id, layout),
    ),
    ...lengthColumns<AnchorInPlace>('along the tube from P1', ({ row }) => row.alongTubeMm),
    ...column<AnchorInPlace>('turn in plan from fore and aft (deg)', ({ row }) => planDeg(row.anchor.mount)),
    ...column<AnchorInPlace>(
      'lean from upright (deg)',
      ofTab((mount) => mount.leanDeg),
    ),
    ...column<AnchorInPlace>(
      'rise of the shank (deg)',
      ofEye((mount) => mount.riseDeg),
    ),
    ...lengthColumns<AnchorInPlace>(
      'thickness',
      ofTab((mount) => mount.thicknessMm),
    ),
    ...lengthColumns<AnchorInPlace>(
      'hole diameter',
      ofTab((mount) => mount.holeDiameterMm),
    ),
    ...sizeColumns,
    ...column<AnchorInPlace>(
      'shear',
      ofTab((mount) => mount.shear),
    ),
    ...lengthColumns<AnchorInPlace>(
      'thread diameter',
      ofEye((mount) => mount.threadDiameterMm),
    ),
    ...lengthColumns<AnchorInPlace>(
      'eye diameter',
      ofEye((mount) => mount.eyeDiameterMm),
    ),
    ...column<AnchorInPlace>(
      'strap goes',
      ofWrap((mount) => mount.over),
    ),
    ...column<AnchorInPlace>(
      'guide hoops',
      ofWrap((mount) => (mount.guideHoops ? 'yes' : 'no')),
    ),
    ...pullColumns,
  ]
  return tableOf(columns, anchors)
}

/** The way the strap leaves the anchor in the seat as drawn. */
const pullColumns = [
  ...column<AnchorInPlace>(
    'pull in side view from level (deg)',
    ({ row }) => row.pull?.sideFromLevelDeg ?? null,
  ),
  ...column<AnchorInPlace>('pull runs', ({ row }) => row.pull?.runs ?? null),
  ...column<AnchorInPlace>(
    'pull in plan from fore and aft (deg)',
    ({ row }) => row.pull?.planFromCentreDeg ?? null,
  ),
  ...column<AnchorInPlace>('pull turns', ({ row }) => row.pull?.turns ?? null),
  ...column<AnchorInPlace>('string from level (deg)', ({ row }) => row.pull?.stringFromLevelDeg ?? null),
]

/** Sizes of the plate that nobody typed are choices of ours, and the last column names them. */
const sizeColumns = [
  ...lengthColumns<AnchorInPlace>(
    'width of the tab',
    ofTab((mount) => tabSize(mount).widthMm),
  ),
  ...lengthColumns<AnchorInPlace>('edge distance of the hole', ({ row: { anchor } }) =>
    anchor.mount.kind === 'tab' && tabForm(anchor.mount) !== 'insert'
      ? tabSize(anchor.mount).edgeDistanceMm
      : null,
  ),
  ...lengthColumns<AnchorInPlace>('gap of the clevis', ({ row: { anchor } }) =>
    anchor.mount.kind === 'tab' && tabForm(anchor.mount) === 'clevis' ? tabSize(anchor.mount).gapMm : null,
  ),
  ...column<AnchorInPlace>(
    'sizes not typed but chosen',
    ofTab((mount) =>
      tabSize(mount)
        .chosen.map((size) => SIZE_WORDS[size])
        .join(', '),
    ),
  ),
]

const SIZE_WORDS = { widthMm: 'width', edgeDistanceMm: 'edge distance', gapMm: 'gap' } as const
