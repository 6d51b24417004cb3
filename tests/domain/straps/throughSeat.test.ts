import { describe, expect, it } from 'vitest'
import type { PathProblem } from '../../../src/domain/straps/path'
import { solvePlace } from '../../../src/domain/straps/solve'
import { belt, lapTabs, pathOf, point, problemOf, scene, slot, tab } from './scenes'

/** Seats that the strap as drawn could only lie in by passing through shell or body. Worked out by hand. */

describe('a slot within the body', () => {
  const walls = (halfMm: number): ReturnType<typeof solvePlace> =>
    solvePlace(
      scene({
        seat: {
          slots: [
            slot({ straps: ['lap-left'], face: 'side', centre: point(100, -halfMm, -100), lengthMm: 400 }),
          ],
        },
      }),
    )

  it('blocks a lap strap that would meet the hip outside the wall', () => {
    // The end of the pelvis is an ellipse of 110 by 55 about 115 from the middle. In its own measure the tab is at (x, y), and the
    // tangent from there meets it at the sine (y − x√(x² + y² − 1))/(x² + y²).
    const x = -Math.hypot(200, 200) / 110
    const y = (250 - 115) / 55
    const sine = (y - x * Math.sqrt(x * x + y * y - 1)) / (x * x + y * y)
    const problem = problemOf(walls(140), 'lap-left')
    expect(problem).toMatchObject({ kind: 'slot-blocked', by: 'body' })
    expect(problem?.kind === 'slot-blocked' && problem.insideMm).toBeCloseTo(115 + 55 * sine - 140, 9)
    expect(problemOf(walls(165), 'lap-left')).toBeUndefined()
  })

  it('blocks a shoulder strap that would meet the shoulder behind the backrest', () => {
    const steep = (backMm: number): ReturnType<typeof solvePlace> =>
      solvePlace(
        scene({
          seat: {
            slots: [
              slot({
                straps: ['shoulder-left'],
                face: 'back',
                centre: point(backMm, -80, 500),
                heightMm: 400,
                lengthMm: 200,
              }),
            ],
          },
          anchors: [...lapTabs, tab('shoulder-left', point(101, -80, 90))],
        }),
      )
    // Nearly straight up beside the arc of radius 100, which it meets just short of 100 behind its middle.
    expect(problemOf(steep(60), 'shoulder-left')).toMatchObject({ kind: 'slot-blocked', by: 'body' })
    expect(problemOf(steep(100.5), 'shoulder-left')).toBeUndefined()
  })
})

describe('a backrest without slots', () => {
  // Reclined 30°, rim 120 behind and 500 above the hip point: at (353.9, 373.0); shoulder at (295, 511).
  const reclined = (xMm: number, zMm: number): ReturnType<typeof solvePlace> =>
    solvePlace(
      scene({
        reclineDeg: 30,
        shoulderRadiusMm: 0,
        seat: { backrestRim: { xMm: 120, zMm: 500 } },
        anchors: [...lapTabs, tab('shoulder-left', point(xMm, -80, zMm))],
      }),
    )

  it('has no way for a strap from behind it that is not led over its rim', () => {
    // 219.4 behind in the seat's own frame; straight to the shoulder it would come through 59 below the rim.
    expect(problemOf(reclined(340, 150), 'shoulder-left')).toEqual({
      kind: 'no-slot',
      strap: 'shoulder-left',
    })
  })

  it('leads it over the rim from farther back, and lets it be on its front', () => {
    expect(pathOf(reclined(400, 150), 'shoulder-left').contacts[1]).toMatchObject({ on: 'rim' })
    // 116.3 behind the hip point in the seat's own frame, the rim 120.
    expect(problemOf(reclined(345, 365), 'shoulder-left')).toBeUndefined()
  })

  it('is not passed by the tail of joined straps either', () => {
    // The tail of 300 ends 84 behind the shoulders and would come through 110 behind them at 484.
    const joined = (rimMm: number, shoulderTailMm = 300): ReturnType<typeof solvePlace> => {
      const at = point(300, 0, 300)
      return solvePlace(
        scene({
          belt: belt(4, { shoulderTailMm }),
          shoulderRadiusMm: 0,
          seat: { backrestRim: { xMm: 110, zMm: rimMm } },
          anchors: [...lapTabs, tab('shoulder-left', at), tab('shoulder-right', at)],
        }),
      )
    }
    expect(problemOf(joined(470), 'shoulder-right')).toBeUndefined()
    const problem = problemOf(joined(500), 'shoulder-right')
    if (problem?.kind !== 'tail-too-long') throw new Error(problem?.kind)
    // Up to the rim it is √(190² + 200²) = 275.86: a tail as much shorter as it says leaves the straps to be led over the rim.
    expect(problem.overMm).toBeGreaterThan(300 - 275.86)
    expect(problem.overMm).toBeLessThan(300 - 275.86 + 300 / 16)
    expect(pathOf(joined(500, 300 - problem.overMm), 'shoulder-left').contacts[2]).toMatchObject({
      on: 'rim',
    })
  })
})

describe('the upper edge of a shell’s side', () => {
  const lap = (tabXMm: number, cornersXMm: readonly number[]): ReturnType<typeof solvePlace> =>
    solvePlace(
      scene({
        seat: {
          sideOutline: [
            [-300, -100],
            ...cornersXMm.map((xMm) => [xMm, -100]),
            [200, -100],
            [200, 400],
            [220, 400],
            [220, -150],
            [-290, -150],
          ].map(([xMm = 0, zMm = 0]) => ({ xMm, zMm })),
          topOutline: [
            { xMm: 0, yMm: -200 },
            { xMm: 0, yMm: 200 },
          ],
        },
        hipHalfBreadthMm: 115,
        anchors: [tab('lap-left', point(tabXMm, -260, -300))],
      }),
    )

  const rounded = (problem: PathProblem | undefined): PathProblem | undefined =>
    problem?.kind === 'lap-anchor-not-behind'
      ? { ...problem, aheadMm: Number(problem.aheadMm.toFixed(9)) }
      : problem

  it('holds a strap no better where its outline happens to have another point', () => {
    for (const tabXMm of [-40, -20, -5, 20, 80, 150, 300]) {
      const plain = lap(tabXMm, [])
      const divided = lap(tabXMm, [-90, 10, 35, 120])
      expect(rounded(problemOf(divided, 'lap-left'))).toEqual(rounded(problemOf(plain, 'lap-left')))
      expect(divided.paths.length).toBe(plain.paths.length)
      for (const { strap, lengthMm } of plain.paths)
        expect(pathOf(divided, strap).lengthMm).toBeCloseTo(lengthMm, 6)
    }
  })

  it('does not hold a strap at a corner that it would slide forward from', () => {
    const sloped = solvePlace(
      scene({
        lapLowestDeg: 45,
        seat: {
          sideOutline: [
            [160, 640],
            [150, -190],
            [-360, -180],
            [-380, -60],
            [-120, 0],
            [20, 16],
            [80, 220],
            [110, 660],
          ].map(([xMm = 0, zMm = 0]) => ({ xMm, zMm })),
          topOutline: [
            { xMm: 0, yMm: -178 },
            { xMm: 0, yMm: 178 },
          ],
        },
        anchors: [tab('lap-left', point(206, -204, -306))],
      }),
    )
    // At the corner 20 behind the hip point the pulls toward tab and hip add up forward and down the edge; it ends ahead of the hip.
    expect(problemOf(sloped, 'lap-left')).toMatchObject({ kind: 'lap-anchor-not-behind' })
  })
})
