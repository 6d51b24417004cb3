import { describe, expect, it } from 'vitest'
import { type RuleContext, ruleApplies } from '../../../src/domain/rules/applies'
import type { RuleCondition } from '../../../src/domain/rules/rule'
import type { Belt } from '../../../src/domain/straps/strap'

const belt: Belt = {
  arrangement: 6,
  webbingMm: { shoulder: 75, lap: 50, sub: 50 },
  material: 'polyester',
  buckle: 'latch-and-link',
  lapAdjuster: 'pull-up',
  headAndNeckRestraint: false,
  adjusterTailMm: 200,
  wrapReturnMm: 200,
}
const context: RuleContext = {
  reclineDeg: 20,
  reclinesFurther: false,
  belt,
  dusty: false,
  seatAdjustable: false,
  mount: null,
}
const applies = (when: RuleCondition, change: Partial<RuleContext> = {}): boolean =>
  ruleApplies({ when }, { ...context, ...change })

describe('ruleApplies', () => {
  it('speaks always when it has no condition', () => {
    expect(applies({})).toBe(true)
  })

  it.each([
    // Formula SAE 2026 T.2.1 d, e (read): upright is "angled at 30° or less from the vertical", reclined is more.
    { reclineDeg: 29.999, upright: true },
    { reclineDeg: 30, upright: true },
    { reclineDeg: 30.001, upright: false },
  ])('at $reclineDeg° the upright rule speaks: $upright, and the reclined one is its opposite', (row) => {
    expect(applies({ reclineAtMostDeg: 30 }, row)).toBe(row.upright)
    expect(applies({ reclineAboveDeg: 30 }, row)).toBe(!row.upright)
  })

  it('has both rules speak at 30° exactly of a back that reclines on from there, and only there', () => {
    // "More than 30°" begins there: the strap of a back at 30.000001° stands as it does at 30°.
    const past = (reclineDeg: number, reclinesFurther: boolean) =>
      applies({ reclineAboveDeg: 30 }, { reclineDeg, reclinesFurther })
    expect([past(30, true), past(29.999, true), past(30, false), past(30.001, true)]).toEqual([
      true,
      false,
      false,
      true,
    ])
    expect(applies({ reclineAtMostDeg: 30 }, { reclineDeg: 30, reclinesFurther: true })).toBe(true)
    expect(applies({ reclineAtMostDeg: 30 }, { reclineDeg: 30.001, reclinesFurther: true })).toBe(false)
  })

  it('holds belt conditions against the belt', () => {
    expect(applies({ arrangements: [6, 7] })).toBe(true)
    expect(applies({ arrangements: [5] })).toBe(false)
    expect(applies({ headAndNeckRestraint: false })).toBe(true)
    expect(applies({ headAndNeckRestraint: true })).toBe(false)
  })

  it('holds how thigh straps and the diagonal run, of belts that have them', () => {
    // Formula SAE 2026 T.2.7 (read) has two options for the straps of a 6-point belt; rearward is what a belt has that says nothing.
    const option = (thighStraps: 'rearward' | 'under-thighs', change: Partial<Belt> = {}) =>
      applies({ thighStraps }, { belt: { ...belt, ...change } })
    expect([option('rearward'), option('under-thighs')]).toEqual([true, false])
    const under = { thighStraps: 'under-thighs' } as const
    expect([option('rearward', under), option('under-thighs', under)]).toEqual([false, true])
    expect(option('under-thighs', { ...under, arrangement: 7 })).toBe(true)
    expect(option('rearward', { arrangement: 5 })).toBe(false)
    const diagonal = (side: 'left' | 'right', change: Partial<Belt>) =>
      applies({ diagonal: side }, { belt: { ...belt, ...change } })
    expect(diagonal('left', { arrangement: 3 })).toBe(true)
    expect(diagonal('right', { arrangement: 3 })).toBe(false)
    expect(diagonal('right', { arrangement: 3, diagonal: 'right' })).toBe(true)
    expect(diagonal('left', { arrangement: 4 })).toBe(false)
  })

  it('holds use and seat conditions both ways', () => {
    expect(applies({ dusty: true })).toBe(false)
    expect(applies({ dusty: true }, { dusty: true })).toBe(true)
    expect(applies({ seatAdjustable: false })).toBe(true)
    expect(applies({ seatAdjustable: true })).toBe(false)
    expect(applies({ seatAdjustable: true }, { seatAdjustable: true })).toBe(true)
  })

  it('does not speak of a mount or a strap where there is none', () => {
    expect(applies({ mount: 'tab' })).toBe(false)
    expect(applies({ mount: 'tab' }, { mount: 'tab' })).toBe(true)
    expect(applies({ mount: 'tab' }, { mount: 'wrap' })).toBe(false)
    expect(applies({ tube: 'harness-bar' })).toBe(false)
    expect(applies({ tube: 'harness-bar' }, { tube: 'harness-bar' })).toBe(true)
    expect(applies({ tube: 'harness-bar' }, { tube: 'cage' })).toBe(false)
    expect(applies({ straps: ['sub-centre'] })).toBe(false)
    expect(applies({ straps: ['sub-centre'] }, { strap: 'sub-centre' })).toBe(true)
    expect(applies({ straps: ['sub-centre'] }, { strap: 'sub-left' })).toBe(false)
  })

  it('needs every condition to hold', () => {
    expect(applies({ arrangements: [6], dusty: true })).toBe(false)
    expect(applies({ arrangements: [6], dusty: true }, { dusty: true })).toBe(true)
  })
})
