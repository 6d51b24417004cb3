import { describe, expect, it } from 'vitest'
import type { StrapId } from '../../../src/domain/straps/strap'
import type { PathProblem } from '../../../src/domain/straps/path'
import { seatFrame } from '../../../src/domain/straps/placeFrame'
import { seatShell } from '../../../src/domain/straps/seatShell'
import { solvePlace, type SolvedPlace } from '../../../src/domain/straps/solve'
import { belt, pathOf, point, problemOf, scene, tab } from './scenes'

/*
 * Between the sides of a shell only its lower edge is in a strap's way: the chain of its outline from the foremost point below and
 * behind to the highest. Worked out by hand.
 */

type Corners = readonly (readonly [number, number])[]

const outlineOf = (corners: Corners): { xMm: number; zMm: number }[] =>
  corners.map(([xMm, zMm]) => ({ xMm, zMm }))

const sidesAt = (halfMm: number): { xMm: number; yMm: number }[] => [
  { xMm: 0, yMm: -halfMm },
  { xMm: 0, yMm: halfMm },
]

describe('the two edges of a shell’s outline', () => {
  const edges = (corners: Corners): { upper: Corners; lower: Corners } => {
    const given = scene({ seat: { sideOutline: outlineOf(corners), topOutline: sidesAt(200) } })
    const shell = seatShell(seatFrame(given), given.seat)
    const seen = (edge: 'upperEdge' | 'lowerEdge'): Corners =>
      (shell?.[edge] ?? []).map(({ uMm, vMm }) => [uMm, vMm] as const)
    return { upper: seen('upperEdge'), lower: seen('lowerEdge') }
  }
  const [front, rear, top] = [
    [-300, -100],
    [200, -100],
    [220, 400],
  ] as const

  it('are told apart in a triangle, whose foremost corner is one of its lowest', () => {
    const expected = { upper: [front, top], lower: [front, rear, top] }
    expect(edges([front, rear, top])).toEqual(expected)
    expect(edges([top, rear, front])).toEqual(expected)
    expect(edges([rear, top, front])).toEqual(expected)
  })

  it('of a box are its top, and its front, bottom and back', () => {
    const [a, b, c, d] = [
      [-300, 100],
      [-300, -100],
      [200, -100],
      [200, 100],
    ] as const
    for (const corners of [
      [a, b, c, d],
      [c, b, a, d],
      [b, c, d, a],
    ] as const)
      expect(edges(corners)).toEqual({ upper: [a, d], lower: [a, b, c, d] })
  })

  it('leave no upper one where the foremost point is the highest', () => {
    const [a, b, c] = [
      [-300, 100],
      [-200, -100],
      [200, -100],
    ] as const
    expect(edges([b, c, a])).toEqual({ upper: [], lower: [a, b, c, a] })
  })
})

describe('a strap between the sides of the shell', () => {
  const solved = (
    strap: StrapId,
    at: readonly [number, number, number],
    corners: Corners,
    halfMm = 200,
  ): SolvedPlace =>
    solvePlace(
      scene({
        belt: belt(5),
        hipHalfBreadthMm: halfMm < 115 ? 170 : 115,
        seat: { sideOutline: outlineOf(corners), topOutline: sidesAt(halfMm) },
        anchors: [...lapsInside.filter((lap) => lap.strap !== strap), tab(strap, point(...at))],
      }),
    )
  const problem = (...given: Parameters<typeof solved>): PathProblem | undefined =>
    problemOf(solved(...given), given[0])
  /** At 45° from the hip point, as those beyond the sides. */
  const lapsInside = [tab('lap-left', point(100, -190, -100)), tab('lap-right', point(100, 190, -100))]
  const noSlot = (strap: StrapId): PathProblem => ({ kind: 'no-slot', strap })

  /** A pan with sides raised above the hip point. */
  const tub: Corners = [
    [-400, 50],
    [0, 60],
    [100, 400],
    [150, 400],
    [150, -150],
    [-390, -150],
  ]

  it('may run from a place inside it over the occupant’s side', () => {
    // The lap strap stays inside it, the crotch strap comes out over its upper edge: to the buckle at (−78, 78).
    expect(problem('lap-left', [100, -190, -100], tub)).toBeUndefined()
    expect(problem('sub-centre', [-200, 0, -120], tub)).toBeUndefined()
  })

  it('does not pass its floor or its back', () => {
    expect(problem('lap-left', [200, -190, -100], tub)).toEqual(noSlot('lap-left'))
    expect(problem('sub-centre', [-200, 0, -149.9], tub)).toBeUndefined()
    expect(problem('sub-centre', [-200, 0, -150], tub)).toEqual(noSlot('sub-centre'))
    expect(problem('sub-centre', [-200, 0, -300], tub)).toEqual(noSlot('sub-centre'))
  })

  it('passes over the lip of its pan and not below it', () => {
    // From (−200, −300) straight to the buckle at 110/√2 ahead of and above the hip point: at the height −100 it is this far back.
    const buckle = 110 / Math.SQRT2
    const atLip = -200 + ((200 - buckle) * 200) / (300 + buckle)
    const pan = (lipXMm: number): Corners => [
      [lipXMm, -100],
      [200, -100],
      [200, 400],
      [220, 400],
      [220, -150],
      [lipXMm + 10, -150],
    ]
    expect(problem('sub-centre', [-200, 0, -300], pan(atLip + 0.1))).toBeUndefined()
    expect(problem('sub-centre', [-200, 0, -300], pan(atLip))).toBeUndefined()
    expect(problem('sub-centre', [-200, 0, -300], pan(atLip - 0.1))).toEqual(noSlot('sub-centre'))
  })

  const pan: Corners = [
    [-300, -100],
    [200, -100],
    [200, 400],
    [220, 400],
    [220, -150],
    [-290, -150],
  ]

  it('is the same one whether its tab is just outside or just inside the sides', () => {
    // The strap from 450 below the hip point has yet to pass the pan's bottom, at −150, when it comes in under the side.
    for (const yMm of [-199, -201, -260])
      expect(problem('lap-left', [150, yMm, -450], pan)).toEqual(noSlot('lap-left'))
  })

  it('is looked at between them only', () => {
    // From behind the backrest past its outside, and in over the pan: at −200 it is 30 behind and 20 below the hip point.
    expect(problem('lap-left', [450, -1200, -100], pan)).toBeUndefined()
    // Hips that reach out beyond the sides, at ±100: from 160 below the strap is through the pan before it is out, from 300 below not.
    expect(problem('lap-left', [150, -90, -160], pan, 100)).toEqual(noSlot('lap-left'))
    expect(problem('lap-left', [150, -90, -300], pan, 100)).toBeUndefined()
    // The hips and the tabs beyond the sides: whatever lies between them, the strap touches nothing.
    const tall: Corners = [
      [-600, 600],
      [300, 600],
      [300, -400],
      [-600, -400],
    ]
    for (const [strap, yMm] of [
      ['lap-left', -250],
      ['lap-right', 250],
    ] as const)
      expect(pathOf(solved(strap, [150, yMm, -160], tall, 100), strap).contacts.map(({ on }) => on)).toEqual([
        'anchor',
        'body',
        'body',
        'buckle',
      ])
  })

  it('worn under the thighs does not pass its back', () => {
    const under = (xMm: number): PathProblem | undefined =>
      problemOf(
        solvePlace(
          scene({
            belt: belt(6, { thighStraps: 'under-thighs' }),
            seat: { sideOutline: outlineOf(tub), topOutline: sidesAt(200) },
            anchors: [
              ...lapsInside,
              tab('sub-left', point(xMm, -150, -90)),
              tab('sub-right', point(xMm, 150, -90)),
            ],
          }),
        ),
        'sub-left',
      )
    expect(under(149)).toBeUndefined()
    expect(under(151)).toEqual(noSlot('sub-left'))
  })
})

describe('a strap over the side of the shell', () => {
  it('lies where the way from mount to body is shortest, of several places in balance', () => {
    // A tooth on the edge: the straight strap would come in through it, and either flank could hold it.
    const [foot, tip, heel] = [
      [10, -120],
      [60, 60],
      [110, -120],
    ] as const
    const corners: Corners = [
      [-300, -120],
      foot,
      tip,
      heel,
      [200, -120],
      [200, 400],
      [220, 400],
      [220, -150],
      [-290, -150],
    ]
    const edgeXMm = (tabXMm: number): number => {
      const given = scene({
        hipHalfBreadthMm: 115,
        lapLowestDeg: 0,
        seat: { sideOutline: outlineOf(corners), topOutline: sidesAt(200) },
        anchors: [tab('lap-left', point(tabXMm, -230, -150))],
      })
      const [, edge] = pathOf(solvePlace(given), 'lap-left').contacts
      expect(edge?.on).toBe('seat-side')
      return edge?.point.xMm ?? 0
    }
    // To the flat end of the pelvis, whose front contact lies 110 beyond the hip point and 85 further in.
    const wayMm = (tabXMm: number, x: number, z: number): number =>
      Math.hypot(tabXMm - x, 30, -150 - z) + Math.hypot(Math.hypot(x, z) + 110, 85)
    const shortest = (
      tabXMm: number,
      [footX, footZ]: readonly [number, number],
    ): { mm: number; x: number } => {
      let best = { mm: Infinity, x: 0 }
      for (let share = 0; share <= 1; share += 1e-5) {
        const x = tip[0] + share * (footX - tip[0])
        const mm = wayMm(tabXMm, x, tip[1] + share * (footZ - tip[1]))
        if (mm < best.mm) best = { mm, x }
      }
      return best
    }
    const flanks = [70, 85, 100, 110, 120, 130].map((tabXMm) => {
      const [ahead, behind] = [shortest(tabXMm, foot), shortest(tabXMm, heel)]
      const { x } = ahead.mm < behind.mm ? ahead : behind
      expect(Math.abs(edgeXMm(tabXMm) - x)).toBeLessThan(0.01)
      return x < tip[0] ? 'ahead' : 'behind'
    })
    expect(new Set(flanks).size).toBe(2)
  })

  it('lies behind the hip point where it can, though a place ahead of it is nearer', () => {
    // A tooth astride the hip point; from a tab 21 behind it the way over the front flank would be the shorter one.
    const [tip, heel] = [
      [10, 114],
      [103, -120],
    ] as const
    const given = scene({
      hipHalfBreadthMm: 115,
      lapLowestDeg: 14,
      seat: {
        sideOutline: outlineOf([
          [-300, -120],
          [-55, -120],
          tip,
          heel,
          [250, -120],
          [250, 400],
          [270, 400],
          [270, -150],
          [-290, -150],
        ]),
        topOutline: sidesAt(200),
      },
      anchors: [tab('lap-left', point(21, -230, -186))],
    })
    // Along the rear flank, to the front contact 110 beyond the hip point and 85 further in.
    let best = { mm: Infinity, x: 0 }
    for (let share = 0; share <= 1; share += 1e-5) {
      const x = tip[0] + share * (heel[0] - tip[0])
      const z = tip[1] + share * (heel[1] - tip[1])
      const mm = Math.hypot(21 - x, 30, -186 - z) + Math.hypot(Math.hypot(x, z) + 110, 85)
      if (mm < best.mm) best = { mm, x }
    }
    const [, edge] = pathOf(solvePlace(given), 'lap-left').contacts
    expect(edge?.on).toBe('seat-side')
    expect(Math.abs((edge?.point.xMm ?? 0) - best.x)).toBeLessThan(0.01)
  })
})
