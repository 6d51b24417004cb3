import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PointMm } from '../../../src/domain/geometry/point'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { solvePlace, type SolvedPlace } from '../../../src/domain/straps/solve'
import { preparedPlace, strapAt, strapQuantitiesAt } from '../../../src/domain/straps/strapAt'
import {
  bar,
  belt,
  hasValue,
  lapTabs,
  pathOf,
  point,
  problemOf,
  scene,
  slot,
  tab,
  valueOf,
  wrap,
  type SceneChoice,
} from './scenes'

/* Statics of three strings that meet, worked out by hand. Shoulders at y ±80 in every car here. */

const degrees = (radians: number): number => (radians * 180) / Math.PI
const LEFT = 'shoulder-left'
const RIGHT = 'shoulder-right'

const onTail = (tailMm: number, at: PointMm, choice: SceneChoice = {}): StrapScene =>
  scene({
    shoulderRadiusMm: 0,
    belt: belt(4, { shoulderTailMm: tailMm }),
    anchors: [...lapTabs, tab(LEFT, at), tab(RIGHT, at)],
    ...choice,
  })

const junctionOf = (solved: SolvedPlace): PointMm => {
  const found = pathOf(solved, LEFT).contacts[1]
  if (found?.on !== 'junction') throw new Error(found?.on)
  return found.point
}

const expectPoint = (found: PointMm, x: number, y: number, z: number, digits = 8): void => {
  expect(found.xMm).toBeCloseTo(x, digits)
  expect(found.yMm).toBeCloseTo(y, digits)
  expect(found.zMm).toBeCloseTo(z, digits)
}

describe('a symmetric pair, whose tail and runs are one line from the side', () => {
  it('meets on the tangent from the anchor to the shoulder arc', () => {
    // Arc of 100 about (0, 490). From (500, 0, 390) the middle is √(500² + 100²) away, the tangent √(260 000 − 10 000) = 500 long.
    // It rises by 2·atan(100/500) from level: tan 2α = 5/12, so (−12, 5)/13 along it.
    const solved = solvePlace(onTail(260, point(500, 0, 390), { shoulderRadiusMm: 100 }))
    const [c, s] = [12 / 13, 5 / 13]
    expectPoint(junctionOf(solved), 500 - 260 * c, 0, 390 + 260 * s)
    const touch = pathOf(solved, LEFT).bodyContact
    expectPoint(touch, 500 - 500 * c, -80, 390 + 500 * s)
    expect(valueOf(solved, 'shoulder-drop', LEFT)).toBeCloseTo(degrees(Math.atan2(5, 12)), 9)
    expect(valueOf(solved, 'shoulder-plan', LEFT)).toBeCloseTo(degrees(Math.atan2(80, 240 * c)), 9)
    expect(valueOf(solved, 'shoulder-free-length', RIGHT)).toBeCloseTo(260 + Math.hypot(240, 80), 9)
    expect(valueOf(solved, 'shoulder-height', RIGHT)).toBeCloseTo(590 - 390, 9)
    expect(valueOf(solved, 'shoulder-spacing', 'shoulder-pair')).toBe(0)
    expect(valueOf(solved, 'shoulder-junction', 'shoulder-pair')).toBeCloseTo(500 - 260 * c - 100, 9)
    // Between rim (110, 300) and anchor: above it, straight past; the rim itself is 90 lower than the anchor, 390 ahead.
    expect(valueOf(solved, 'shoulder-rim-drop', LEFT)).toBeCloseTo(degrees(Math.atan2(-90, 390)), 9)
    // x = 110 is 390/c along the line from the anchor; from the junction on the runs spread by 80 in 240.
    const passMm = 390 / c - 260
    expect(valueOf(solved, 'shoulder-length-behind-seat', LEFT)).toBeCloseTo(
      260 + passMm * Math.hypot(1, 80 / 240),
      9,
    )
  })

  it('bends over the rim with its runs spread evenly along them, unrolled', () => {
    // Rim 110 behind and 510 high, anchor 300 behind it and 400 lower: 500 on 3-4-5. From the rim to the shoulders (0, 590): 136.01.
    const solved = solvePlace(
      onTail(200, point(410, 0, 110), { seat: { backrestRim: { xMm: 110, zMm: 510 } } }),
    )
    expectPoint(junctionOf(solved), 410 - 0.6 * 200, 0, 110 + 0.8 * 200)
    const onMm = Math.hypot(110, 80)
    const rimYMm = (80 * 300) / (300 + onMm)
    expect(pathOf(solved, RIGHT).contacts[2]?.on).toBe('rim')
    expectPoint(pathOf(solved, RIGHT).contacts[2]?.point ?? point(0, 0, 0), 110, rimYMm, 510)
    expect(valueOf(solved, 'shoulder-rim-drop', RIGHT)).toBeCloseTo(degrees(Math.atan2(400, 300)), 8)
    expect(valueOf(solved, 'shoulder-length-behind-seat', LEFT)).toBeCloseTo(200 + Math.hypot(300, rimYMm), 8)
    expect(valueOf(solved, 'shoulder-free-length', LEFT)).toBeCloseTo(200 + Math.hypot(300 + onMm, 80), 8)
    expect(valueOf(solved, 'shoulder-drop', LEFT)).toBeCloseTo(degrees(Math.atan2(80, 110)), 8)
  })

  it('leaves a wrapped bar on the tangent of bar and arc', () => {
    // Over a bar of 50 about (500, 590 − 50): its top is level with the shoulders.
    const at = point(500, 0, 540)
    const solved = solvePlace(
      onTail(150, at, {
        tubes: [bar(500, 540, 100)],
        anchors: [...lapTabs, wrap(LEFT, at, 'over'), wrap(RIGHT, at, 'over')],
      }),
    )
    expectPoint(junctionOf(solved), 350, 0, 590)
    expect(valueOf(solved, 'shoulder-height', LEFT)).toBeCloseTo(0, 9)
    expect(valueOf(solved, 'wrap-square', LEFT)).toBeCloseTo(90, 9)
  })

  it('leads a tail over the rim where the junction lies ahead of it', () => {
    // Level at 590: anchor 400 behind the shoulders, junction 50 behind them, rim 110 behind at 520.
    const solved = solvePlace(
      onTail(350, point(400, 0, 590), {
        seat: { backrestRim: { xMm: 110, zMm: 520 } },
        belt: belt(4, {
          shoulderTailMm: 350,
          adjusters: { shoulder: { fromAnchorMm: 295, lengthMm: 60 } },
        }),
      }),
    )
    expectPoint(junctionOf(solved), 50, 0, 590)
    // The adjuster's body lies from 265 to 325 along the tail, the rim is passed at 290.
    expect(valueOf(solved, 'adjuster-clearance', LEFT)).toBeCloseTo(-25, 9)
    expect(valueOf(solved, 'shoulder-length-behind-seat', LEFT)).toBeCloseTo(290, 9)
    expect(valueOf(solved, 'shoulder-rim-drop', LEFT)).toBeCloseTo(degrees(Math.atan2(-70, 290)), 9)
  })

  it('says nothing of the rim when the anchor is ahead of it', () => {
    const solved = solvePlace(
      onTail(50, point(300, 0, 590), { seat: { backrestRim: { xMm: 310, zMm: 520 } } }),
    )
    expect(hasValue(solved, 'shoulder-rim-drop', LEFT)).toBe(false)
    expect(valueOf(solved, 'shoulder-length-behind-seat', LEFT)).toBe(0)
  })

  it('is as separate straps from the same place on a tail of next to nothing', () => {
    const at = point(450, 0, 500)
    const separate = solvePlace(onTail(1, at, { belt: belt(4) }))
    const joined = solvePlace(onTail(1e-6, at))
    for (const id of ['shoulder-drop', 'shoulder-plan', 'shoulder-free-length', 'strap-length'] as const)
      expect(valueOf(joined, id, LEFT)).toBeCloseTo(valueOf(separate, id, LEFT), 5)
  })
})

describe('any pair', () => {
  const mm = (min: number, max: number): fc.Arbitrary<number> =>
    fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((step) => min + ((max - min) * step) / 1_000_000)
  const at = fc.record({ xMm: mm(160, 700), yMm: mm(-250, 250), zMm: mm(350, 900) })

  /** Cars whose straps run free, over the rim, through slots that bend them and through a thick shell. */
  const car = fc.constantFrom<SceneChoice>(
    {},
    { shoulderRadiusMm: 90 },
    { shoulderRadiusMm: 90, seat: { backrestRim: { xMm: 120, zMm: 560 } } },
    {
      shoulderRadiusMm: 60,
      seat: {
        slots: ([-1, 1] as const).map((side) =>
          slot({
            id: `slot-${side}`,
            straps: [side < 0 ? LEFT : RIGHT],
            face: 'back',
            centre: point(130, 70 * side, 560),
            turnDeg: 12 * side,
          }),
        ),
        shellThicknessMm: 20,
      },
    },
  )

  /** Where two straps that end at a place pull it, from their solved paths; null where they have none. */
  const pullAt = (choice: SceneChoice, from: PointMm): PointMm | null => {
    const prepared = preparedPlace(onTail(0, from, { ...choice, belt: belt(4) }))
    const pulls = ([LEFT, RIGHT] as const).flatMap((strap) => {
      const solved = strapAt(prepared, strap, from)
      const next = solved?.ok === true ? solved.value.path.contacts[1]?.point : undefined
      if (next === undefined) return []
      const d = [next.xMm - from.xMm, next.yMm - from.yMm, next.zMm - from.zMm] as const
      const lengthMm = Math.hypot(...d)
      return [{ xMm: d[0] / lengthMm, yMm: d[1] / lengthMm, zMm: d[2] / lengthMm }]
    })
    const [a, b] = pulls
    if (a === undefined || b === undefined) return null
    const sum = point(a.xMm + b.xMm, a.yMm + b.yMm, a.zMm + b.zMm)
    const lengthMm = Math.hypot(sum.xMm, sum.yMm, sum.zMm)
    return point(sum.xMm / lengthMm, sum.yMm / lengthMm, sum.zMm / lengthMm)
  }

  it('finds the junction from which its anchor was worked out', () => {
    let found = 0
    fc.assert(
      fc.property(car, at, mm(20, 500), (choice, junction, tailMm) => {
        const pull = pullAt(choice, junction)
        if (pull === null) return
        const anchor = point(
          junction.xMm - tailMm * pull.xMm,
          junction.yMm - tailMm * pull.yMm,
          junction.zMm - tailMm * pull.zMm,
        )
        const solved = solvePlace(onTail(tailMm, anchor, choice))
        if (problemOf(solved, LEFT)?.kind === 'clear-of-shoulder') return
        found += 1
        const { xMm, yMm, zMm } = junctionOf(solved)
        expect(Math.hypot(xMm - junction.xMm, yMm - junction.yMm, zMm - junction.zMm)).toBeLessThan(1e-6)
      }),
      { numRuns: 2000 },
    )
    expect(found).toBeGreaterThan(1000)
  })

  /** A body whose shoulder arc counts how often it is looked at: each strap tried looks at it a fixed number of times. */
  const counting = (given: StrapScene): { given: StrapScene; looks: () => number } => {
    let looks = 0
    const { centre, radiusMm } = given.body.shoulderArc
    const shoulderArc = {
      centre,
      get radiusMm(): number {
        looks += 1
        return radiusMm
      },
    }
    return { given: { ...given, body: { ...given.body, shoulderArc } }, looks: () => looks }
  }

  it('costs a few times what two separate straps cost, and not without end where there is no balance', () => {
    const settled: number[] = []
    const refused: number[] = []
    fc.assert(
      fc.property(car, at, mm(20, 900), (choice, anchor, tailMm) => {
        const looked = (changes: SceneChoice): { looks: number; solved: SolvedPlace } => {
          const { given, looks } = counting(onTail(tailMm, anchor, { ...choice, ...changes }))
          const solved = solvePlace(given)
          return { looks: looks(), solved }
        }
        const { looks, solved } = looked({})
        const isRefused = problemOf(solved, LEFT)?.kind === 'tail-too-long'
        ;(isRefused ? refused : settled).push(looks / looked({ belt: belt(4) }).looks)
      }),
      { numRuns: 1000 },
    )
    expect(settled.toSorted((a, b) => a - b)[Math.floor(0.99 * settled.length)]).toBeLessThan(12)
    expect(Math.max(...settled, ...refused)).toBeLessThan(60)
    expect(Math.min(settled.length, refused.length)).toBeGreaterThan(100)
  })
})

describe('a pair tried in one place after another', () => {
  it('has there what it would have if it were hung up there', () => {
    const prepared = preparedPlace(onTail(120, point(480, 20, 560)))
    for (const xMm of [480, 520, 560, 480])
      for (const strap of [LEFT, RIGHT] as const) {
        const there = point(xMm, 20, 560)
        const anew = solvePlace(onTail(120, there)).quantities.filter(({ subject }) => subject === strap)
        const byId = (a: { id: string }, b: { id: string }): number => a.id.localeCompare(b.id)
        expect([...strapQuantitiesAt(prepared, strap, there)].sort(byId)).toEqual(anew.sort(byId))
      }
  })
})

describe('joined straps hung up where they cannot be', () => {
  const hung = (tailMm: number, at: PointMm, more: SceneChoice = {}): SolvedPlace =>
    solvePlace(onTail(tailMm, at, { shoulderRadiusMm: 100, ...more }))

  it('say so of an anchor ahead of or inside the shoulder', () => {
    expect(problemOf(hung(50, point(-200, 0, 650)), LEFT)).toMatchObject({ kind: 'anchor-ahead-of-shoulder' })
    expect(problemOf(hung(50, point(60, 0, 490)), RIGHT)).toMatchObject({ kind: 'anchor-inside-body' })
  })

  it('say by how much a tail that reaches past the shoulders is too long', () => {
    // The tangent from (500, 0, 590) touches at (0, 590): 500 away, so that 600 of tail are 100 too many at least.
    const problem = problemOf(hung(600, point(500, 0, 590)), LEFT)
    if (problem?.kind !== 'tail-too-long') throw new Error(problem?.kind)
    expect(problem.overMm).toBeGreaterThan(100)
    expect(problem.overMm).toBeLessThan(100 + 600 / 16 + 1e-9)
    expect(problemOf(hung(600 - problem.overMm, point(500, 0, 590)), LEFT)).toBeUndefined()
  })

  it('say so of a mount short of their slots, and of a tail that reaches through them', () => {
    const slots = ([-1, 1] as const).map((side) =>
      slot({
        id: `slot-${side}`,
        straps: [side < 0 ? LEFT : RIGHT],
        face: 'back',
        centre: point(130, 70 * side, 580),
      }),
    )
    expect(problemOf(hung(50, point(120, 0, 590), { seat: { slots } }), LEFT)).toEqual({
      kind: 'slot-not-reached',
      strap: LEFT,
      shortMm: 10,
    })
    expect(problemOf(hung(300, point(400, 0, 590), { seat: { slots } }), RIGHT)).toMatchObject({
      kind: 'tail-too-long',
    })
    expect(problemOf(hung(200, point(400, 0, 590), { seat: { slots } }), RIGHT)).toBeUndefined()
  })
})

describe('a tail over a bar straight below the rim', () => {
  it.each([112, 115, 120])('leaves it, %d mm behind, where straps without a tail do', (xMm) => {
    // The junction leans over to the far side of the bar's middle; what is over is said of the straps as a whole.
    const at = point(xMm, 0, 200)
    const given = onTail(80, at, {
      anchors: [...lapTabs, wrap(LEFT, at, 'over'), wrap(RIGHT, at, 'over')],
      tubes: [bar(xMm, 200, 40)],
      seat: { backrestRim: { xMm: 110, zMm: 560 } },
    })
    const joined = solvePlace(given)
    expect(junctionOf(joined).xMm).toBeGreaterThan(xMm)
    const { xMm: leavesXMm, zMm: leavesZMm } =
      pathOf(solvePlace({ ...given, belt: belt(4) }), LEFT).contacts[0]?.point ?? at
    expectPoint(pathOf(joined, LEFT).contacts[0]?.point ?? at, leavesXMm, 0, leavesZMm, 7)
  })
})
