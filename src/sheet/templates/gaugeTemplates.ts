import type { Layout, Place } from '../../domain/layout/document/layout'
import { familyWord, placeName } from '../../domain/layout/wording/names'
import type { AnchorRow } from '../../domain/shop/anchorRows'
import { angleGauge } from '../../domain/shop/tab/angleGauge'
import { type Way, wayOf } from '../../domain/shop/tab/way'
import type { FlatPoint } from '../../domain/shop/flat/flatFigure'
import { tabForm, type TabMount } from '../../domain/straps/anchor'
import { tabNormal } from '../../domain/straps/tabPlane'
import { strapSide } from '../../domain/straps/strap'
import { angleText, wrappedDeg } from '../../domain/units/angle'
import { at, loop, type Template, writing } from './template'

/** One use of a gauge. */
interface Use {
  /** From level, or in plan from the car's centre line, degrees, 0…90. */
  readonly deg: number
  readonly words: string
}

/** One gauge for every angle that has to be set, with everything it is good for. */
export const gaugeTemplates = (
  places: readonly { readonly place: Place; readonly rows: readonly AnchorRow[] }[],
  layout: Layout,
): readonly Template[] => {
  const uses = places.flatMap(({ place, rows }) => {
    const where = layout.places.length > 1 ? `${placeName(place.id, layout)}, ` : ''
    return rows
      .filter(({ sameAsItem }) => sameAsItem === null)
      .flatMap((row) => usesOf(row).map((use) => ({ ...use, words: `${where}${use.words}` })))
  })
  return groupedUses(uses).flatMap(gaugeOf)
}

/** Angles this near to each other share a gauge: finer than one can be cut. Our judgement. */
const SHARED_DEG = 0.25

/** Uses from the smallest angle on, those of nearly one angle together. */
const groupedUses = (uses: readonly Use[]): readonly (readonly Use[])[] => {
  const groups: Use[][] = []
  for (const use of uses.toSorted((a, b) => a.deg - b.deg)) {
    const [first] = groups.at(-1) ?? []
    if (first !== undefined && use.deg - first.deg <= SHARED_DEG) groups.at(-1)?.push(use)
    else groups.push([use])
  }
  return groups
}

/** One gauge at the middle of its uses' angles, to a tenth of a degree. */
const gaugeOf = (uses: readonly Use[]): readonly Template[] => {
  const degs = uses.map((use) => use.deg)
  const deg = Math.round(((Math.min(...degs) + Math.max(...degs)) / 2) * 10) / 10
  const gauge = angleGauge(deg)
  if (gauge === null) return []
  const isLevel = gauge.base === 'level'
  const [low, high] = gauge.slant
  const middle = (share: number): FlatPoint =>
    at(low.xMm + (high.xMm - low.xMm) * share, low.yMm + (high.yMm - low.yMm) * share)
  return [
    {
      kind: 'gauge',
      figure: {
        id: `gauge-${String(deg).replace('.', '-')}`,
        title: `Angle gauge ${angleText(deg)}`,
        shapes: [
          loop('CUT', gauge.points),
          ...(isLevel
            ? [
                writing(at(3, 2.5), 'this edge level (in plan: along the car)'),
                writing(at(3, 8), angleText(deg), { heightMm: 5 }),
              ]
            : [
                writing(at(4, 3), 'this edge plumb (in plan: across the car)', { upward: true }),
                writing(at(7, 4), angleText(deg), { heightMm: 5 }),
              ]),
          tickAt(middle(0.5)),
        ],
      },
      words: [
        `Sloping edge ${angleText(deg)} from level${isLevel ? '' : `, ${angleText(90 - deg)} from plumb`}. Turn the gauge over where it rises the other way.`,
        ...uses.map((use) => `${angleText(use.deg)}  ${use.words}`),
      ],
    },
  ]
}

/** A small mark on the sloping edge, so that nobody sets the wrong edge. */
const tickAt = ({ xMm, yMm }: FlatPoint): Template['figure']['shapes'][number] => ({
  kind: 'circle',
  layer: 'MARK',
  centre: at(xMm, yMm),
  radiusMm: 1.2,
})

const usesOf = (row: AnchorRow): readonly Use[] => {
  const { itemNumber, anchor, pull } = row
  const who = `${itemNumber} ${strapSide(anchor.strap)} ${familyWord(anchor.strap)}`
  const way = pull === null || pull.runs === 'neither' ? '' : `, ${pull.runs}`
  const uses: Use[] = []
  if (pull !== null) {
    const rise = pull.sideFromLevelDeg < 0 ? 'falls' : 'rises'
    uses.push({
      deg: Math.abs(pull.sideFromLevelDeg),
      words: `${who}: line of pull from the side, ${rise}${way}`,
    })
    uses.push({
      deg: Math.abs(pull.stringFromLevelDeg),
      words: `${who}: along a string pulled on that line, ${rise}${way}`,
    })
  }
  return [...uses, ...plateUses(row, who)]
}

/** A line without an arrow turned by half a turn is the same line: its turn from the car's centre line, (-90°, 90°], + rear end right. */
const lineTurnDeg = (planDeg: number): number => wrappedDeg(planDeg * 2) / 2

/** Of a leaning plate the way that its upper face is turned, whichever way its turn was written. */
const upperFace = (mount: TabMount): Way => {
  const normal = tabNormal(mount)
  const up = normal.z < 0 ? -1 : 1
  return wayOf({ x: up * normal.x, y: up * normal.y, z: 0 })
}

/** The turn and lean of a plate, or of an eye bolt's shank. */
const plateUses = ({ anchor: { mount } }: AnchorRow, who: string): readonly Use[] => {
  if (mount.kind === 'wrap') return []
  const turnDeg = lineTurnDeg(mount.planDeg)
  const side = turnDeg < 0 ? 'left' : 'right'
  if (mount.kind === 'eye')
    return [
      { deg: Math.abs(turnDeg), words: `${who}: shank in plan, rear end ${side}` },
      { deg: Math.abs(mount.riseDeg), words: `${who}: shank from level` },
    ]
  const face = tabForm(mount) === 'insert' ? 'face of the insert' : 'plate'
  return [
    { deg: Math.abs(turnDeg), words: `${who}: ${face} in plan, rear edge ${side}` },
    {
      deg: 90 - Math.abs(mount.leanDeg),
      words: `${who}: ${face} leans, its face toward the ${upperFace(mount)} looks up`,
    },
  ]
}
