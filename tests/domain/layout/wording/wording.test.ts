import { describe, expect, it } from 'vitest'
import {
  limitText,
  moveText,
  outsideText,
  roomText,
  valueText,
} from '../../../../src/domain/layout/wording/amounts'
import { CAUTIONS } from '../../../../src/domain/layout/wording/cautions'
import {
  anchorName,
  sittingName,
  sittingNameUnder,
  strapName,
  subjectName,
} from '../../../../src/domain/layout/wording/names'
import { problemText } from '../../../../src/domain/layout/wording/problemText'
import { propertyName } from '../../../../src/domain/layout/wording/propertyNames'
import {
  quantityFault,
  quantityMeaning,
  quantityName,
} from '../../../../src/domain/layout/wording/quantities'
import { remedyText } from '../../../../src/domain/layout/wording/remedyText'
import { ruleSentence } from '../../../../src/domain/layout/wording/ruleSentence'
import {
  directionWord,
  levelWord,
  statusWord,
  verdictWord,
} from '../../../../src/domain/layout/wording/words'
import { PROPERTY_IDS } from '../../../../src/domain/rules/rule'
import { RULE_SETS } from '../../../../src/domain/rules/ruleSets'
import type { PathProblem } from '../../../../src/domain/straps/path'
import { QUANTITY_IDS } from '../../../../src/domain/straps/quantity'
import { STRAP_IDS } from '../../../../src/domain/straps/strap'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const layout = flatLayout([flatPlace({ anchors: tabPair('lap', { xMm: 200, yMm: 230, zMm: -200 }) })], {
  tubes: [crossTube('bar', 330, 520)],
})
const inches = { ...layout, units: { ...layout.units, length: 'in' as const } }
const odd = /undefined|NaN|Infinity|null|\[object/

describe('quantity words', () => {
  it('has a name, a meaning and a fault on either side for every quantity', () => {
    const names = QUANTITY_IDS.map(quantityName)
    expect(new Set(names).size).toBe(names.length)
    for (const id of QUANTITY_IDS) {
      expect(quantityMeaning(id)).toMatch(/^[A-Z].*\.$/)
      expect(quantityFault(id, 'low')).not.toBe(quantityFault(id, 'high'))
    }
    expect(new Set(PROPERTY_IDS.map(propertyName)).size).toBe(PROPERTY_IDS.length)
  })
})

describe('amounts', () => {
  it('shows angles and mm at a tenth with a true minus sign', () => {
    expect(valueText('shoulder-drop', -7.25, 'mm')).toBe('−7.3°')
    expect(valueText('lap-over-asis', -0.04, 'mm')).toBe('0 mm')
    expect(valueText('spine-load-share', 0.876, 'mm')).toBe('0.88 of the strap tension')
    expect(valueText('bar-area', 119.63, 'in')).toBe('120 mm²')
    expect(valueText('tab-shear', 'single', 'mm')).toBe('single shear')
  })

  it('adds decimals until a value outside its limits looks outside', () => {
    expect(outsideText('lap-angle', 44.97, { min: 45, max: 60 }, 'mm')).toBe('44.97°')
    expect(outsideText('lap-angle', 44.99996, { min: 45, max: 60 }, 'mm')).toBe('44.99996°')
    expect(outsideText('lap-angle', 40.04, { min: 45, max: 60 }, 'mm')).toBe('40°')
    expect(outsideText('bar-area', 113.7, { min: 114, max: null }, 'mm')).toBe('113.7 mm²')
  })

  it('never rounds a move down: what is less than computed may not clear', () => {
    expect(moveText(22, 'mm')).toBe('22 mm')
    // 22 / 25.4 = 0.86614 in = 13.858 sixteenths, so 14: 7/8 in.
    expect(moveText(22, 'in')).toBe('7/8 in (22 mm)')
    // 23 / 25.4 · 16 = 14.488: the nearest sixteenth is 14, but 15 is needed.
    expect(moveText(23, 'in')).toBe('15/16 in (23 mm)')
    expect(moveText(25.4, 'in')).toBe('1 in (25.4 mm)')
    expect(moveText(22.01, 'mm')).toBe('22.1 mm')
  })

  // 1.6 mm is 1.008 sixteenths of an inch and 50 mm is 31.5: a plate of 1/16 in and webbing of 1 15/16 in would be too small.
  it('rounds inches to the side that keeps a limit', () => {
    const limit = { min: 175, max: 235, wanted: null }
    expect(limitText('tab-thickness', { ...limit, min: 1.6, max: null }, 'in')).toBe(
      'at least 1/8 in (1.6 mm)',
    )
    // 175 mm is 110.24 sixteenths, 235 mm is 148.03.
    expect(limitText('shoulder-spacing', limit, 'in')).toBe('6 15/16 in (175 mm) to 9 1/4 in (235 mm)')
    expect(limitText('shoulder-spacing', limit, 'mm')).toBe('175 mm to 235 mm')
    expect(remedyText({ kind: 'change-property', property: 'webbing-width', to: '50' }, inches)).toBe(
      'Take webbing 2 in (50 mm) wide.',
    )
  })

  it('rounds the room to a limit down, so that nobody uses up more than there is', () => {
    // 0.9 mm is 0.57 of a sixteenth of an inch: nearest would show 1/16 in, which is 1.6 mm.
    expect(roomText(0.9, 'in')).toBe('0 in (0.9 mm)')
    expect(roomText(9.99, 'mm')).toBe('9.9 mm')
    expect(roomText(9.6, 'in')).toBe('3/8 in (9.6 mm)')
  })
})

describe('names', () => {
  it('names straps, anchors, tubes and sittings in the trade’s words', () => {
    expect(strapName('sub-centre')).toBe('centre anti-submarine strap')
    expect(layout.places[0]?.anchors.map(anchorName)).toEqual(['left lap tab', 'right lap tab'])
    expect(subjectName('tube:bar', layout)).toBe('Test bar')
    expect(subjectName('tube:gone', layout)).toBe('tube gone')
    expect(subjectName('head', layout)).toBe('helmet')
    for (const strap of STRAP_IDS) expect(subjectName(strap, layout)).toBe(strapName(strap))
    const sitting = { id: 's', placeId: 'driver', occupantId: 'marla', slideMm: -60, reclineDeg: 12.5 }
    expect(sittingName(sitting, layout)).toBe('Marla, seat 60 mm forward, back at 12.5°')
    expect(sittingName({ ...sitting, slideMm: 25.4, reclineDeg: 20 }, inches)).toBe(
      'Marla, seat 1 in rearward',
    )
    expect(sittingNameUnder('workshop-lap-angle', 'driver/marla/0/20', layout)).toBe('Marla, seat as drawn')
    expect(sittingNameUnder('workshop-lap-angle', 'nobody', layout)).toBe('nobody')
  })
})

describe('remedyText', () => {
  it('says each kind of change in one sentence a welder can follow', () => {
    const bothLaps = ['lap-left-anchor', 'lap-right-anchor']
    const move = (anchorIds: readonly string[], direction: 'down' | 'outward') =>
      remedyText({ kind: 'move-anchors', anchorIds, direction, byMm: 22 }, layout)
    expect(move(bothLaps, 'down')).toBe('Move both lap tabs down 22 mm.')
    expect(move(bothLaps, 'outward')).toBe('Move both lap tabs outward 22 mm each.')
    expect(move(['lap-right-anchor'], 'outward')).toBe('Move the right lap tab outward 22 mm.')
    expect(move(['lap-left-anchor', 'gone'], 'down')).toBe(
      'Move the left lap tab and anchor gone down 22 mm.',
    )
    const onTubes = (tubeIds: readonly string[]): typeof layout => ({
      ...layout,
      tubes: [...layout.tubes, ...layout.tubes.map((tube) => ({ ...tube, id: 'other', name: 'Other bar' }))],
      places: layout.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor, index) => ({
          ...anchor,
          mount: { ...anchor.mount, tubeId: tubeIds[index] ?? 'bar' },
        })),
      })),
    })
    const slide = { kind: 'move-anchors', anchorIds: bothLaps, direction: 'outward', byMm: 22 } as const
    expect(remedyText(slide, onTubes(['bar', 'bar']))).toBe(
      'Move both lap tabs outward 22 mm each, along Test bar.',
    )
    expect(remedyText(slide, onTubes(['bar', 'other']))).toBe(
      'Move both lap tabs outward 22 mm each, along Test bar and Other bar.',
    )
    expect(remedyText({ kind: 'move-tube', tubeId: 'bar', direction: 'up', byMm: 22 }, inches)).toBe(
      'Move Test bar up 7/8 in (22 mm), with every anchor on it.',
    )
    expect(
      remedyText({ kind: 'turn-tab', anchorId: 'lap-left-anchor', planDeg: 12, leanDeg: -5.25 }, layout),
    ).toBe(
      'Turn the left lap tab: 12° from fore-and-aft, rearward edge to the right, leaned 5.3°, top edge to the right.',
    )
    expect(remedyText({ kind: 'change-property', property: 'bar-wall', to: '1.6' }, layout)).toBe(
      'Take a tube with a wall of 1.6 mm.',
    )
    expect(remedyText({ kind: 'add-anchor', strap: 'sub-left' }, layout)).toBe(
      'Place an anchor for the left anti-submarine strap.',
    )
    expect(remedyText({ kind: 'none', reason: 'No place does.' }, layout)).toBe('No place does.')
  })

  it('has a sentence for every property', () => {
    for (const property of PROPERTY_IDS) {
      for (const to of ['50', 'yes', 'double']) {
        const text = remedyText({ kind: 'change-property', property, to }, layout)
        expect(text).toMatch(/^[A-Z].*\.$/)
        expect(text).not.toMatch(odd)
      }
    }
  })
})

describe('problemText', () => {
  const problems: readonly PathProblem[] = [
    { kind: 'anchor-missing', strap: 'lap-left' },
    { kind: 'anchor-inside-body', strap: 'sub-left', insideMm: 12.34 },
    { kind: 'anchor-ahead-of-shoulder', strap: 'shoulder-left', aheadMm: 30 },
    { kind: 'lap-anchor-not-behind', strap: 'lap-right', aheadMm: 5 },
    { kind: 'buckle-unknown', strap: 'sub-centre' },
    { kind: 'slot-blocked', strap: 'shoulder-right', by: 'tube', insideMm: 3 },
    { kind: 'clear-of-shoulder', strap: 'shoulder-right', clearMm: 3 },
    { kind: 'sub-anchor-not-below', strap: 'sub-centre', aboveMm: 147 },
    { kind: 'lap-anchor-across', strap: 'lap-left', acrossMm: 230 },
    { kind: 'slot-not-reached', strap: 'lap-left', shortMm: 10 },
    { kind: 'slot-not-reached', strap: 'shoulder-right', shortMm: 0 },
    { kind: 'slot-not-reached', strap: 'sub-centre', shortMm: 4 },
    { kind: 'no-slot', strap: 'lap-right' },
    { kind: 'through-tube', strap: 'lap-right', tubeId: 'cross-lap', insideMm: 12 },
    { kind: 'sub-anchor-not-behind', strap: 'sub-left', aheadMm: 31 },
    { kind: 'junction-apart', strap: 'shoulder-left', apartMm: 220 },
    { kind: 'tail-too-long', strap: 'shoulder-right', overMm: 12 },
  ]
  const tubes = [{ id: 'cross-lap', name: 'Seat frame tube' }]

  it.each(problems)('says $kind and what to do', (problem) => {
    for (const unit of ['mm', 'in'] as const) {
      expect(problemText(problem, { units: { length: unit }, tubes })).toMatch(/^The .+\. [A-Z].+\.$/)
      expect(problemText(problem, { units: { length: unit }, tubes })).not.toMatch(odd)
    }
  })

  it('gives the offending length in the shop’s unit', () => {
    const inside = { kind: 'anchor-inside-body', strap: 'lap-left', insideMm: 12.7 } as const
    expect(problemText(inside, { units: { length: 'in' }, tubes })).toContain('1/2 in')
  })

  it('calls a tube by the name the builder gave it, else by its id', () => {
    const through = { kind: 'through-tube', strap: 'lap-left', tubeId: 'cross-lap', insideMm: 12 } as const
    expect(problemText(through, { units: { length: 'mm' }, tubes })).toBe(
      'The left lap strap, pulled taut, would pass 12 mm deep through Seat frame tube. Move the anchor, the slot or the tube until the strap clears it.',
    )
    expect(problemText(through, { units: { length: 'mm' }, tubes: [] })).toContain('through tube cross-lap.')
  })

  it('says where the anchor lies that does not reach its slot', () => {
    const short = { kind: 'slot-not-reached', strap: 'lap-left', shortMm: 10 } as const
    expect(problemText(short, { units: { length: 'mm' }, tubes })).toBe(
      'The left lap strap would never pass its slot: its anchor lies 10 mm short of it, on the body’s side. Move the anchor outward past the slot, correct the place of the slot, or take the strap off it.',
    )
    expect(problemText({ ...short, shortMm: 0 }, { units: { length: 'mm' }, tubes })).toContain(
      'lies in the slot itself',
    )
  })

  it('blames a slot that is on the wrong side of the body, and not the anchor', () => {
    const misplaced = {
      kind: 'slot-not-reached',
      strap: 'sub-left',
      shortMm: 273,
      isSlotOnWrongSide: true,
    } as const
    expect(problemText(misplaced, { units: { length: 'mm' }, tubes })).toBe(
      'The slot of the left anti-submarine strap lies on the wrong side of the body, so that the strap would never pass it on its way to the anchor. Correct the place of the slot under Seat.',
    )
    expect(
      problemText({ ...misplaced, strap: 'shoulder-right' }, { units: { length: 'mm' }, tubes }),
    ).toContain('The slot of the right shoulder strap lies ahead of the body')
  })
})

describe('ruleSentence', () => {
  it('prints every rule with how its figure reached us', () => {
    const words = [
      'read in the document',
      'quoted second-hand',
      'from memory',
      'common practice, no source',
      'our judgement, no source',
    ]
    for (const rule of RULE_SETS.flatMap((set) => set.rules)) {
      const { source } = ruleSentence(rule)
      expect(words.some((word) => source.includes(word))).toBe(true)
      expect(source).not.toMatch(odd)
    }
  })
})

describe('words', () => {
  it('has a word for every verdict, level, status and direction', () => {
    const all = [
      ...(['broken', 'tight', 'unchecked', 'clear'] as const).map(verdictWord),
      ...(['must', 'should', 'advice'] as const).map(levelWord),
      ...(['read', 'second-hand', 'memory', 'common-practice', 'judgement', 'own'] as const).map(statusWord),
      ...(['up', 'down', 'forward', 'rearward', 'inward', 'outward'] as const).map(directionWord),
    ]
    expect(new Set(all).size).toBe(all.length)
    expect(all.every((word) => /^[a-z]/.test(word))).toBe(true)
  })
})

describe('CAUTIONS', () => {
  it('says that this is no certificate and who decides', () => {
    const text = CAUTIONS.join(' ')
    expect(CAUTIONS.length).toBeGreaterThanOrEqual(4)
    expect(CAUTIONS.length).toBeLessThanOrEqual(6)
    for (const word of [
      'not a certificate',
      'rule book',
      'belt maker',
      'local law',
      'licensed',
      'Sources disagree',
    ]) {
      expect(text).toContain(word)
    }
  })
})
