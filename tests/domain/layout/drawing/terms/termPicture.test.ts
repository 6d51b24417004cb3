import { describe, expect, it } from 'vitest'
import { parseLayout } from '../../../../../src/domain/layout/document/parseLayout'
import { SCENE } from '../../../../../src/domain/layout/drawing/terms/carPictures'
import type { Picture } from '../../../../../src/domain/layout/drawing/terms/picture'
import { reasonFigure, reasonTrial } from '../../../../../src/domain/layout/drawing/terms/reasonFigures'
import { termPicture } from '../../../../../src/domain/layout/drawing/terms/termPicture'
import { REASON_IDS, reasonOf } from '../../../../../src/domain/layout/wording/reasons'
import { foundTerms, TERM_IDS, termOf } from '../../../../../src/domain/layout/wording/terms'
import { deflectionRatio } from '../../../../../src/domain/shop/reasons/bending'
import { GROWTH_LIMITS, KEPT_STRENGTH } from '../../../../../src/domain/shop/reasons/webbing'
import type { Primitive } from '../../../../../src/domain/layout/drawing/primitive'

const numbersOf = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : []
}

const pointsOf = (primitive: Primitive): readonly { readonly uMm: number; readonly vMm: number }[] => {
  switch (primitive.kind) {
    case 'polyline':
      return primitive.points
    case 'circle':
      return [primitive.centre]
    case 'label':
    case 'mark':
      return [primitive.at]
    case 'dimension':
      return [primitive.from, primitive.to]
    case 'angle':
      return [primitive.apex]
    case 'zone':
      return []
  }
}

const expectSound = ({ primitives, bounds, description, textHeightMm }: Picture): void => {
  const inView = primitives.filter((primitive) =>
    pointsOf(primitive).some(
      ({ uMm, vMm }) =>
        uMm >= bounds.min.uMm && uMm <= bounds.max.uMm && vMm >= bounds.min.vMm && vMm <= bounds.max.vMm,
    ),
  )
  expect(inView.length).toBeGreaterThan(0)
  expect(numbersOf([primitives, bounds, textHeightMm]).every(Number.isFinite)).toBe(true)
  expect(new Set(primitives.map(({ key }) => key)).size).toBe(primitives.length)
  expect((bounds.max.uMm - bounds.min.uMm) / (bounds.max.vMm - bounds.min.vMm)).toBeCloseTo(4 / 3, 6)
  expect(description).toMatch(/\.$/)
}

describe('the guide’s car', () => {
  it('could be saved and opened', () => {
    expect(parseLayout(SCENE.layout).ok).toBe(true)
  })

  it('breaks no rule of the workshop and leaves none unchecked', () => {
    const findings = SCENE.evaluation.places.flatMap((place) => place.findings)
    expect(findings.length).toBeGreaterThan(20)
    expect(findings.filter(({ verdict }) => verdict === 'broken' || verdict === 'unchecked')).toEqual([])
  })
})

describe('termPicture', () => {
  it.each(TERM_IDS)('%s is drawn in its window', (id) => {
    const picture = termPicture(id)
    expectSound(picture)
    expect(picture.primitives.length).toBeGreaterThan(2)
  })
})

describe('terms', () => {
  it.each(TERM_IDS)('%s is explained in whole sentences', (id) => {
    const { word, says, watch } = termOf(id)
    expect(word).toMatch(/^[A-Z]/)
    for (const text of [says, watch]) expect(text).toMatch(/^[A-Z].*[.”)]$/s)
  })

  it('two words are never called the same', () => {
    expect(new Set(TERM_IDS.map((id) => termOf(id).word)).size).toBe(TERM_IDS.length)
  })

  it('a search finds parts of words, whatever the case and hyphens, with the word itself first', () => {
    expect(foundTerms('HEAD and neck')[0]).toBe('head-and-neck-restraint')
    expect(foundTerms('three bar')[0]).toBe('three-bar-slide')
    expect(foundTerms('slot')[0]).toBe('strap-slot')
    expect(foundTerms('zzz')).toEqual([])
    expect(foundTerms('  ')).toHaveLength(TERM_IDS.length)
  })
})

describe('reasonFigure', () => {
  it.each(REASON_IDS)('%s is drawn and said at every value that can be tried', (id) => {
    const trial = reasonTrial(id)
    const count = trial === null ? 1 : Math.round((trial.max - trial.min) / trial.step) + 1
    const step = Math.max(1, Math.floor(count / 6))
    for (let index = 0; index < count; index += step) {
      const { picture, readings } = reasonFigure(
        id,
        trial === null ? 0 : trial.min + index * trial.step,
        'mm',
      )
      expectSound(picture)
      expect(readings.length).toBeGreaterThan(0)
      expect(readings.join(' ')).not.toMatch(/cannot be said|NaN|Infinity/)
    }
    expect(reasonOf(id).sources.length).toBeGreaterThan(0)
    expect('tries' in reasonOf(id)).toBe(trial !== null)
  })

  it('a lower bar presses more on the spine', () => {
    const share = (barUpMm: number): number => {
      const line =
        reasonFigure('square', barUpMm, 'mm').readings.find((each) => each.startsWith('Spine')) ?? ''
      return Number(/[\d.]+/.exec(line)?.[0])
    }
    expect(share(-50)).toBeGreaterThan(share(0))
    expect(share(0)).toBeGreaterThan(share(80))
  })

  it('twice the span moves eight times as far', () => {
    // Source: P·L³/(48·E·I) of any beam table; 2³ = 8, here against the 800 mm of the guide.
    expect(reasonFigure('straight', 400, 'mm').readings[0]).toContain('0.1 times')
    expect(reasonFigure('straight', 1200, 'mm').readings[0]).toContain('3.4 times')
  })

  it('what the words say is what is computed', () => {
    expect(deflectionRatio(2, 1)).toBe(8)
    expect(reasonOf('straight').says.join(' ')).toContain('eight times')
    // cos 10° + 6 · 25/5 · sin 10° = 0.985 + 5.209
    expect(reasonOf('pull').sources.join(' ')).toContain('25 mm above the weld in a plate 5 mm thick')
    expect(reasonFigure('pull', 10, 'mm').readings[0]).toContain('6.2 times')
    const shares = [...KEPT_STRENGTH.slice(1), GROWTH_LIMITS.road, GROWTH_LIMITS.crash]
    const said = [...reasonOf('age').sources, ...reasonOf('short').sources].join(' ')
    for (const { share } of shares) expect(said).toContain(`${100 * share} %`)
    // 4,000 lbf of 4.4482216 N each.
    expect(GROWTH_LIMITS.crash.words).toContain(
      (4000 * 4.448_221_615_260_5).toFixed(0).replace('17793', '17,793'),
    )
  })
})
