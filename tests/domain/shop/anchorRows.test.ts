import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../src/domain/geometry/point'
import type { Tube } from '../../../src/domain/geometry/tube'
import { alongTubeMm, anchorRows, tubeLengthMm } from '../../../src/domain/shop/anchorRows'
import { sideOfTurn } from '../../../src/domain/shop/lineOfPullAngles'
import type { Anchor } from '../../../src/domain/straps/anchor'
import type { StrapPath } from '../../../src/domain/straps/path'
import type { StrapId } from '../../../src/domain/straps/strap'

// An L of 300 mm across and 400 mm up.
const bend = [pointMm(0, 0, 0), pointMm(0, 300, 0), pointMm(0, 300, 400)]

const tube: Tube = {
  id: 'bar',
  name: 'Bar',
  role: 'harness-bar',
  points: bend,
  outsideDiameterMm: 38,
  wallMm: 2.5,
}

const tab = (strap: StrapId, tubeId: string | null): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'tab',
    point: pointMm(50, 300, 100),
    planDeg: 0,
    leanDeg: 0,
    thicknessMm: 5,
    holeDiameterMm: 12,
    shear: 'single',
    tubeId,
  },
})

/** A strap that leaves (50, 300, 100) forward and rises as steeply as asked. */
const path = (strap: StrapId, riseMm: number): StrapPath => ({
  strap,
  contacts: [
    { on: 'anchor', point: pointMm(50, 300, 100), bendDeg: 0 },
    { on: 'body', point: pointMm(-50, 300, 100 + riseMm), bendDeg: 0 },
  ],
  polyline: [pointMm(50, 300, 100), pointMm(-50, 300, 100 + riseMm)],
  effectiveAnchor: pointMm(50, 300, 100),
  bodyContact: pointMm(-50, 300, 100 + riseMm),
  lengthMm: 100,
})

describe('tubeLengthMm', () => {
  it('adds the straight pieces', () => {
    expect(tubeLengthMm(bend)).toBe(700)
    expect(tubeLengthMm(bend.slice(0, 1))).toBe(0)
  })
})

describe('alongTubeMm', () => {
  it('runs along the centre line to the foot of the perpendicular, round the bend', () => {
    expect(alongTubeMm(bend, pointMm(50, 120, 0))).toBe(120)
    expect(alongTubeMm(bend, pointMm(50, 300, 100))).toBe(400)
    expect(alongTubeMm(bend, pointMm(0, -70, 0))).toBe(0)
    expect(alongTubeMm(bend, pointMm(0, 300, 900))).toBe(700)
  })
})

describe('anchorRows', () => {
  const rows = anchorRows({
    anchors: [tab('sub-centre', null), tab('lap-right', 'bar'), tab('lap-left', 'bar')],
    tubes: [tube],
    pathsBySitting: [[path('lap-left', 100)], [path('lap-left', 173.205_08)], []],
    areShoulderStrapsJoined: false,
    firstItemNumber: 4,
  })

  it('lists straps in their usual order, whatever the file says, and numbers them on', () => {
    expect(rows.map((row) => [row.itemNumber, row.anchor.strap])).toEqual([
      [4, 'lap-left'],
      [5, 'lap-right'],
      [6, 'sub-centre'],
    ])
  })

  it('says of the right one of joined shoulder straps that it is the anchor of the left one', () => {
    const shoulders = [tab('shoulder-right', null), tab('lap-left', null), tab('shoulder-left', null)]
    const sameAs = (areShoulderStrapsJoined: boolean) =>
      anchorRows({
        anchors: shoulders,
        tubes: [],
        pathsBySitting: [],
        areShoulderStrapsJoined,
        firstItemNumber: 3,
      }).map((row) => [row.anchor.strap, row.itemNumber, row.sameAsItem])
    expect(sameAs(true)).toEqual([
      ['shoulder-left', 3, null],
      ['shoulder-right', 4, 3],
      ['lap-left', 5, null],
    ])
    expect(sameAs(false).map(([, , same]) => same)).toEqual([null, null, null])
  })

  it('takes the pull from the drawn sitting and the range from all', () => {
    // 100 mm forward: 100 mm up is 45°, 100·√3 mm up is 60°.
    expect(rows[0]?.pull?.sideFromLevelDeg).toBeCloseTo(45, 6)
    expect(rows[0]?.pullRange?.leastDeg).toBeCloseTo(45, 6)
    expect(rows[0]?.pullRange?.mostDeg).toBeCloseTo(60, 6)
  })

  it('tells a swing from leaning forward to leaning rearward from none at all', () => {
    // 100 mm forward or rearward and 400 mm up: both 75.9638° from level, 28.07° apart.
    const leaning = (towardXMm: number): StrapPath => ({
      ...path('sub-centre', 0),
      contacts: [
        { on: 'anchor', point: pointMm(50, 300, 100), bendDeg: 0 },
        { on: 'body', point: pointMm(50 + towardXMm, 300, 500), bendDeg: 0 },
      ],
    })
    const [row] = anchorRows({
      anchors: [tab('sub-centre', null)],
      tubes: [],
      pathsBySitting: [[leaning(-100)], [leaning(100)]],
      areShoulderStrapsJoined: false,
      firstItemNumber: 1,
    })
    const { leastDeg = 0, mostDeg = 0 } = row?.pullRange ?? {}
    expect(mostDeg - leastDeg).toBeCloseTo(2 * (90 - 75.963_757), 5)
    expect(sideOfTurn(leastDeg)).toEqual({ sideFromLevelDeg: expect.closeTo(75.963_757, 5), runs: 'forward' })
    expect(sideOfTurn(mostDeg)).toEqual({ sideFromLevelDeg: expect.closeTo(75.963_757, 5), runs: 'rearward' })
  })

  it('says that there is no pull where no path is, instead of a number', () => {
    expect(rows[1]?.pull).toBeNull()
    expect(rows[1]?.pullRange).toBeNull()
  })

  it('measures along the tube only where there is one', () => {
    expect(rows.map((row) => row.alongTubeMm)).toEqual([400, 400, null])
    expect(rows[2]?.tube).toBeNull()
  })
})
