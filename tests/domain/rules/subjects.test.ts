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

  it('has one shoulder strap and no shoulder pair on a 3-point belt, over either shoulder', () => {
    for (const diagonal of ['left', 'right'] as const) {
      const three = scene(3)
      const over = { ...three, belt: { ...three.belt, diagonal } }
      expect(ruleSubjects({ quantity: 'shoulder-drop', family: 'shoulder' }, over)).toEqual([
        `shoulder-${diagonal}`,
      ])
      expect(ruleSubjects({ quantity: 'shoulder-spacing', family: null }, over)).toEqual([])
      expect(ruleSubjects({ quantity: 'lap-spacing', family: null }, over)).toEqual(['lap-pair'])
    }
  })

  it('asks for a junction only of joined straps, for an adjuster only where it has been placed', () => {
    const six = scene(6)
    const joined = { ...six, belt: { ...six.belt, shoulderTailMm: 120 } }
    expect(ruleSubjects({ quantity: 'shoulder-junction', family: 'shoulder' }, six)).toEqual([])
    expect(ruleSubjects({ quantity: 'shoulder-junction', family: 'shoulder' }, joined)).toEqual([
      'shoulder-pair',
    ])
    const placed = { ...six, belt: { ...six.belt, adjusters: { lap: { fromAnchorMm: 90, lengthMm: 60 } } } }
    expect(ruleSubjects({ quantity: 'adjuster-clearance', family: null }, six)).toEqual([])
    expect(ruleSubjects({ quantity: 'adjuster-clearance', family: null }, placed)).toEqual([
      'lap-left',
      'lap-right',
    ])
    expect(ruleSubjects({ quantity: 'adjuster-clearance', family: 'shoulder' }, placed)).toEqual([])
  })

  it('asks for the room to tubes of every strap that has another tube than its own beside it', () => {
    const rail = {
      id: 'rail',
      name: 'Rail',
      role: 'floor' as const,
      points: [
        { xMm: 0, yMm: 0, zMm: 0 },
        { xMm: 900, yMm: 0, zMm: 0 },
      ],
      outsideDiameterMm: 38,
      wallMm: 2,
    }
    const alone = { ...scene(4), tubes: [rail] }
    expect(ruleSubjects({ quantity: 'tube-clearance', family: 'lap' }, scene(4))).toEqual([])
    // The left lap strap is wrapped round the only tube there is.
    expect(ruleSubjects({ quantity: 'tube-clearance', family: 'lap' }, alone)).toEqual(['lap-right'])
    const two = { ...alone, tubes: [rail, { ...rail, id: 'bar' }] }
    expect(ruleSubjects({ quantity: 'tube-clearance', family: 'lap' }, two)).toEqual([
      'lap-left',
      'lap-right',
    ])
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
