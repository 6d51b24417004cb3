import fc from 'fast-check'

import type { Occupant } from '../../src/domain/body/occupant'
import type { Layout } from '../../src/domain/layout/document/layout'
import type { Anchor } from '../../src/domain/straps/anchor'
import { crossTube, flatLayout, flatPlace, tabPair } from './flatLayout'

/*
 * Cars as somebody might draw them, some good and some not: one place, one or two people, a seat that may slide and recline, shoulder
 * straps on tabs, on tabs of a bar or wrapped round it, lap and thigh tabs. Sizes of a real cockpit; judgement.
 */

const mm = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max })

const person = (id: string): fc.Arbitrary<Occupant> =>
  fc.record({
    id: fc.constant(id),
    name: fc.constant(id),
    sex: fc.constantFrom('female' as const, 'male' as const),
    statureMm: mm(1500, 1950),
    massKg: mm(50, 110),
    // Felt for, so that the lap strap's height over the bones is checked of heavy people too.
    measured: fc.constant({ lapTissueMm: 30 }),
  })

const withWraps = (anchors: readonly Anchor[], over: 'over' | 'under'): readonly Anchor[] =>
  anchors.map((anchor) => ({
    ...anchor,
    mount: { kind: 'wrap', tubeId: 'bar', point: anchor.mount.point, over, guideHoops: true },
  }))

const shoulders = (choice: {
  readonly held: 'tab' | 'bar-tab' | 'over' | 'under'
  readonly at: { readonly xMm: number; readonly yMm: number; readonly zMm: number }
}): readonly Anchor[] => {
  const tabs = tabPair('shoulder', choice.at, choice.held === 'tab' ? null : 'bar')
  return choice.held === 'over' || choice.held === 'under' ? withWraps(tabs, choice.held) : tabs
}

export const plausibleLayout: fc.Arbitrary<Layout> = fc
  .record({
    people: fc
      .integer({ min: 1, max: 2 })
      .chain((count) =>
        fc.tuple(...Array.from({ length: count }, (_, index) => person(`person-${index + 1}`))),
      ),
    held: fc.constantFrom('tab' as const, 'bar-tab' as const, 'over' as const, 'under' as const),
    shoulder: fc.record({ xMm: mm(300, 600), yMm: mm(40, 160), zMm: mm(350, 700) }),
    lap: fc.record({ xMm: mm(40, 300), yMm: mm(180, 280), zMm: mm(-320, -60) }),
    sub: fc.record({ xMm: mm(-120, 160), yMm: mm(30, 90), zMm: mm(-380, -200) }),
    turnDeg: mm(-20, 20),
    slideMm: fc.constantFrom(0, 0, 60),
    reclineDeg: mm(10, 35),
    mirrored: fc.boolean(),
    ruleSetId: fc.constantFrom('workshop-practice', 'student-cars-2026', 'us-road-anchorages-571-210'),
  })
  .map((choice) => {
    const base = flatPlace()
    const anchors = [
      ...shoulders({ held: choice.held, at: choice.shoulder }),
      ...tabPair('lap', choice.lap),
      ...tabPair('sub', choice.sub),
    ].map((anchor): Anchor => {
      const { mount } = anchor
      if (mount.kind === 'wrap') return anchor
      const sign = mount.point.yMm < 0 ? -1 : 1
      return { ...anchor, mount: { ...mount, planDeg: sign * choice.turnDeg } }
    })
    const { mirrored, reclineDeg } = choice
    const place = flatPlace({
      seat: {
        ...base.seat,
        reclineDeg,
        reclineRange: { uprightDeg: reclineDeg, reclinedDeg: reclineDeg },
        slide: { forwardMm: choice.slideMm, rearwardMm: 0 },
      },
      occupants: choice.people,
      belt: { ...base.belt, arrangement: 6 },
      anchors,
      mirrored: { shoulder: mirrored, lap: mirrored, sub: mirrored },
    })
    return flatLayout([place], {
      ruleSetId: choice.ruleSetId,
      tubes: [crossTube('bar', choice.shoulder.xMm, choice.shoulder.zMm)],
    })
  })
