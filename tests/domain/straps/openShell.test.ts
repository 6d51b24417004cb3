import { describe, expect, it } from 'vitest'
import type { StrapId } from '../../../src/domain/straps/strap'
import type { PathProblem } from '../../../src/domain/straps/path'
import { seatFrame } from '../../../src/domain/straps/placeFrame'
import { seatShell } from '../../../src/domain/straps/seatShell'
import { solvePlace } from '../../../src/domain/straps/solve'
import { belt, point, problemOf, scene, tab } from './scenes'

/*
 * Between the sides of a shell only its lower edge is in a strap's way: the chain of its outline from the foremost point below and
 * behind to the highest. Worked out by hand.
 */

type Corners = readonly (readonly [number, number])[]

const outlineOf = (corners: Corners): { xMm: number; zMm: number }[] =>
  corners.map(([xMm, zMm]) => ({ xMm, zMm }))

/** 200 to either side of the seat's middle. */
const topOutline = [
  { xMm: 0, yMm: -200 },
  { xMm: 0, yMm: 200 },
]

describe('the two edges of a shell’s outline', () => {
  const edges = (corners: Corners): { upper: Corners; lower: Corners } => {
    const given = scene({ seat: { sideOutline: outlineOf(corners), topOutline } })
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
  const problem = (
    strap: StrapId,
    at: readonly [number, number, number],
    corners: Corners,
  ): PathProblem | undefined =>
    problemOf(
      solvePlace(
        scene({
          belt: belt(5),
          hipHalfBreadthMm: 115,
          seat: { sideOutline: outlineOf(corners), topOutline },
          anchors: [...lapsInside.filter((lap) => lap.strap !== strap), tab(strap, point(...at))],
        }),
      ),
      strap,
    )
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

  it('is the same one whether its tab is just outside or just inside the sides', () => {
    // A pan whose bottom, at −150, the strap from 450 below the hip point has yet to pass when it comes in under the side.
    const pan: Corners = [
      [-300, -100],
      [200, -100],
      [200, 400],
      [220, 400],
      [220, -150],
      [-290, -150],
    ]
    for (const yMm of [-199, -201, -260])
      expect(problem('lap-left', [150, yMm, -450], pan)).toEqual(noSlot('lap-left'))
  })

  it('worn under the thighs does not pass its back', () => {
    const under = (xMm: number): PathProblem | undefined =>
      problemOf(
        solvePlace(
          scene({
            belt: belt(6, { thighStraps: 'under-thighs' }),
            seat: { sideOutline: outlineOf(tub), topOutline },
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
