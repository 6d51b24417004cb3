import { describe, expect, it } from 'vitest'
import { ruleSubjects, strapsOfPair, type SubjectScene } from '../../../src/domain/rules/subjects'
import type { Anchor } from '../../../src/domain/straps/anchor'
import { QUANTITY_IDS } from '../../../src/domain/straps/quantity'
import type { Arrangement, StrapId } from '../../../src/domain/straps/strap'

const lapWrap: Anchor = {
  id: 'a',
  strap: 'lap-left',
  mount: {
    kind: 'wrap',
    tubeId: 'rail',
    point: { xMm: 0, yMm: 0, zMm: 0 },
    over: 'over',
    guideHoops: true,
  },
}
const slot = (straps: readonly StrapId[]) => ({
  id: 'slot',
  straps,
  face: 'back' as const,
  centre: { xMm: 100, yMm: 0, zMm: 500 },
  lengthMm: 90,
  heightMm: 50,
  turnDeg: 0,
})
const scene = (arrangement: Arrangement): SubjectScene => ({
  belt: {
    arrangement,
    webbingMm: { shoulder: 75, lap: 50, sub: 50 },
    material: 'polyester',
    buckle: 'latch-and-link',
    lapAdjuster: 'pull-up',
    headAndNeckRestraint: false,
    adjusterTailMm: 200,
    wrapReturnMm: 200,
  },
  anchors: [lapWrap],
  tubes: [],
  seat: { slots: [slot(['shoulder-left', 'sub-centre'])] },
})

describe('ruleSubjects', () => {
  it('names the straps that ought to have a number, whether or not they are anchored', () => {
    expect(ruleSubjects({ quantity: 'lap-angle', family: 'lap' }, scene(6))).toEqual([
      'lap-left',
      'lap-right',
    ])
    expect(ruleSubjects({ quantity: 'sub-to-vertical', family: 'sub' }, scene(4))).toEqual([])
    expect(ruleSubjects({ quantity: 'sub-to-vertical', family: 'sub' }, scene(5))).toEqual(['sub-centre'])
    expect(ruleSubjects({ quantity: 'sub-to-vertical', family: null }, scene(7))).toEqual([
      'sub-left',
      'sub-right',
      'sub-centre',
    ])
  })

  it('has a pair only where there are two straps', () => {
    expect(ruleSubjects({ quantity: 'sub-spacing', family: 'sub' }, scene(5))).toEqual([])
    expect(ruleSubjects({ quantity: 'sub-spacing', family: 'sub' }, scene(6))).toEqual(['sub-pair'])
    expect(ruleSubjects({ quantity: 'shoulder-spacing', family: null }, scene(4))).toEqual(['shoulder-pair'])
  })

  it('asks slots, wraps and tabs only of straps that have them', () => {
    expect(ruleSubjects({ quantity: 'slot-bend', family: null }, scene(6))).toEqual(['shoulder-left'])
    expect(ruleSubjects({ quantity: 'slot-bend', family: 'sub' }, scene(7))).toEqual(['sub-centre'])
    expect(ruleSubjects({ quantity: 'wrap-square', family: null }, scene(6))).toEqual(['lap-left'])
    expect(ruleSubjects({ quantity: 'wrap-square', family: 'shoulder' }, scene(6))).toEqual([])
    expect(ruleSubjects({ quantity: 'tab-twist', family: null }, scene(6))).toEqual([])
  })

  it('asks for helmet clearance only where there are tubes', () => {
    expect(ruleSubjects({ quantity: 'helmet-clearance', family: null }, scene(6))).toEqual([])
  })

  it('answers for every quantity', () => {
    for (const quantity of QUANTITY_IDS) {
      expect(Array.isArray(ruleSubjects({ quantity, family: null }, scene(7)))).toBe(true)
    }
  })
})

describe('strapsOfPair', () => {
  it('is empty for what is no pair', () => {
    expect(strapsOfPair('lap-pair')).toEqual(['lap-left', 'lap-right'])
    expect(strapsOfPair('lap-left')).toEqual([])
    expect(strapsOfPair('head')).toEqual([])
  })
})
