import { describe, expect, it } from 'vitest'
import { solvePlace } from '../../../src/domain/straps/solve'
import { preparedPlace, strapQuantitiesAt, strapValueAt } from '../../../src/domain/straps/strapAt'
import {
  bar,
  belt,
  lapTabs,
  pathOf,
  point,
  problemOf,
  scene,
  tab,
  valueOf,
  wrap,
  type SceneChoice,
} from './scenes'

/** A level strap from a shoulder without thickness at (0, −80, 590) to a tab 400 behind it. */
const level = (choice: SceneChoice = {}) =>
  scene({
    shoulderRadiusMm: 0,
    anchors: [
      ...lapTabs,
      tab('shoulder-left', point(400, -80, 590)),
      tab('shoulder-right', point(400, 80, 590)),
    ],
    ...choice,
  })

describe('joined shoulder straps', () => {
  const joined = (rightYMm = 0): ReturnType<typeof solvePlace> =>
    solvePlace(
      level({
        belt: belt(4, { shoulderTailMm: 150 }),
        anchors: [
          ...lapTabs,
          tab('shoulder-left', point(500, 0, 590)),
          tab('shoulder-right', point(500, rightYMm, 590)),
        ],
      }),
    )

  it('meet at the end of a tail in line with both', () => {
    const solved = joined()
    expect(pathOf(solved, 'shoulder-left').contacts[1]).toMatchObject({ on: 'junction' })
    const at = pathOf(solved, 'shoulder-left').effectiveAnchor
    expect([at.xMm, at.yMm, at.zMm].map((mm) => Math.round(mm * 1e6) / 1e6 + 0)).toEqual([350, 0, 590])
    expect(valueOf(solved, 'shoulder-plan', 'shoulder-left')).toBeCloseTo(
      (Math.atan2(80, 350) * 180) / Math.PI,
      6,
    )
    expect(valueOf(solved, 'shoulder-junction', 'shoulder-pair')).toBeCloseTo(350, 6)
    expect(valueOf(solved, 'shoulder-free-length', 'shoulder-left')).toBeCloseTo(150 + Math.hypot(350, 80), 6)
  })

  it('lies in line with the sum of two unlike pulls', () => {
    const at = point(480, 60, 540)
    const solved = solvePlace(
      level({
        belt: belt(4, { shoulderTailMm: 180 }),
        anchors: [...lapTabs, tab('shoulder-left', at), tab('shoulder-right', at)],
      }),
    )
    const junction = pathOf(solved, 'shoulder-left').effectiveAnchor
    const unit = (to: typeof at): readonly number[] => {
      const d = [to.xMm - junction.xMm, to.yMm - junction.yMm, to.zMm - junction.zMm]
      return d.map((mm) => mm / Math.hypot(...d))
    }
    const left = unit(pathOf(solved, 'shoulder-left').bodyContact)
    const right = unit(pathOf(solved, 'shoulder-right').bodyContact)
    const tail = unit(at)
    const sum = left.map((part, index) => part + (right[index] ?? 0))
    for (const [index, part] of sum.entries())
      expect(part / Math.hypot(...sum)).toBeCloseTo(-(tail[index] ?? 0), 9)
    expect(Math.hypot(junction.xMm - 480, junction.yMm - 60, junction.zMm - 540)).toBeCloseTo(180, 9)
  })

  it('cannot hang on two places', () => {
    expect(problemOf(joined(30), 'shoulder-right')).toEqual({
      kind: 'junction-apart',
      strap: 'shoulder-right',
      apartMm: 30,
    })
  })
})

describe('a belt of three points', () => {
  it('leads its one shoulder strap to the front contact of the lap strap on the other side', () => {
    const solved = solvePlace(level({ belt: belt(3) }))
    expect(solved.paths.map(({ strap }) => strap)).toEqual(['shoulder-left', 'lap-left', 'lap-right'])
    const front = pathOf(solved, 'lap-right').contacts.at(-2)?.point
    expect(pathOf(solved, 'shoulder-left').contacts.at(-1)?.point).toEqual(front)
  })
})

describe('straps worn under the thighs', () => {
  const under = (zMm: number): ReturnType<typeof solvePlace> =>
    solvePlace(
      scene({
        belt: belt(6, { thighStraps: 'under-thighs' }),
        anchors: [...lapTabs, tab('sub-left', point(300, -200, zMm)), tab('sub-right', point(300, 200, zMm))],
      }),
    )

  it('run round below the groin and rise rearward', () => {
    // From (300, −50) the middle of the arc of 97 is 304.138 away, 9.462° up; the lower tangent falls asin(97/304.138) = 18.598° less that.
    expect(valueOf(under(-50), 'sub-to-vertical', 'sub-left')).toBeCloseTo(90 + 18.598_4 - 9.462_3, 3)
    expect(pathOf(under(-50), 'sub-left').bodyContact.xMm).toBeGreaterThan(0)
  })

  it('leave it no further ahead than its lowest point', () => {
    expect(problemOf(under(-97), 'sub-left')).toBeUndefined()
    expect(problemOf(under(-120), 'sub-left')).toMatchObject({ kind: 'sub-anchor-not-behind' })
  })
})

describe('strapQuantitiesAt', () => {
  it('says of a strap tried elsewhere what a place solved anew with it there says', () => {
    const given = scene({
      belt: belt(6),
      tubes: [bar(700, 400, 40)],
      anchors: [
        ...lapTabs,
        tab('shoulder-left', point(400, -80, 590)),
        wrap('shoulder-right', point(700, 80, 400), 'over'),
        tab('sub-left', point(20, -50, -300)),
        tab('sub-right', point(20, 50, -300)),
      ],
    })
    const prepared = preparedPlace(given)
    for (const { id, strap, mount } of given.anchors) {
      const at = point(mount.point.xMm + 7, mount.point.yMm + 3, mount.point.zMm - 11)
      const anchors = given.anchors.map((each) =>
        each.id === id ? { ...each, mount: { ...mount, point: at } } : each,
      )
      const anew = solvePlace({ ...given, anchors }).quantities.filter(({ subject }) => subject === strap)
      const tried = strapQuantitiesAt(prepared, strap, at)
      const byId = (a: { id: string }, b: { id: string }): number => a.id.localeCompare(b.id)
      expect([...tried].sort(byId)).toEqual([...anew].sort(byId))
      expect(anew.length).toBeGreaterThan(4)
      expect(strapValueAt(prepared, strap, at, 'strap-length')).toBe(
        anew.find((value) => value.id === 'strap-length')?.value,
      )
    }
  })
})
