import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { addOccupant } from '../../../../src/domain/layout/edit/change'
import { begunFresh, withAnswer, withEdit } from '../../../../src/domain/layout/firstLayout/answer'
import type { QuestionFigure } from '../../../../src/domain/layout/firstLayout/figure/figure'
import type { Ask, Question } from '../../../../src/domain/layout/firstLayout/question'
import { askedQuestions } from '../../../../src/domain/layout/firstLayout/questions'
import { angleText } from '../../../../src/domain/units/angle'
import { lengthWithUnit } from '../../../../src/domain/units/length'
import { givenAnswers } from '../../../support/firstLayoutAnswers'

const VARIETIES = [
  ['belt.arrangement', '3'],
  ['belt.arrangement', '5'],
  ['belt.arrangement', '6'],
  ['belt.arrangement', '7'],
  ['bar.has', 'no'],
  ['tubes.kind', 'cross'],
  ['tubes.kind', 'sides'],
  ['shoulder.kind', 'tab'],
  ['seat.middle', -250],
  ['job.length-unit', 'in'],
] as const

const asksOf = (question: Question, layout: Layout): readonly Ask[] =>
  question.asks(layout, begunFresh().progress.begun)

const shown = (ask: Ask, layout: Layout): string =>
  ask.entry.kind === 'angle'
    ? angleText(Number(ask.read(layout)))
    : lengthWithUnit(Number(ask.read(layout)), layout.units.length)

const numbersIn = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}

const areFinite = ({ primitives, bounds, textHeightMm }: QuestionFigure): boolean =>
  numbersIn([primitives, bounds, textHeightMm]).every(Number.isFinite)

describe('the drawings of where the tape goes', () => {
  it.each(VARIETIES)(
    'show each lettered field once, with the number that the field shows: %s %s',
    (id, answer) => {
      const { layout } = withAnswer(begunFresh(), id, answer)
      for (const question of askedQuestions(layout)) {
        const figures = question.figures(layout)
        for (const ask of asksOf(question, layout)) {
          if (ask.letter === undefined) continue
          const drawn = figures.filter(({ letters }) => letters.includes(ask.letter ?? ''))
          expect(drawn.length, `${question.id} ${ask.id}`).toBe(1)
          expect(drawn[0]?.description).toContain(`${ask.letter}: ${shown(ask, layout)}`)
        }
      }
    },
  )

  it('name each primitive once, so that a page can tell them apart', () => {
    const two = withEdit(begunFresh(), (layout) => addOccupant(layout, 'place-1'))
    for (const { layout } of [
      two,
      ...VARIETIES.map(([id, answer]) => withAnswer(begunFresh(), id, answer)),
    ]) {
      for (const question of askedQuestions(layout))
        for (const { primitives } of question.figures(layout))
          expect(new Set(primitives.map(({ key }) => key)).size).toBe(primitives.length)
    }
  })

  it('are finite whatever is answered', () => {
    fc.assert(
      fc.property(givenAnswers, (given) => {
        const { layout } = given.reduce(
          (guided, { id, answer }) => withAnswer(guided, id, answer),
          begunFresh(),
        )
        const amiss = askedQuestions(layout).filter((question) => !question.figures(layout).every(areFinite))
        expect(amiss.map(({ id }) => id)).toEqual([])
      }),
      { numRuns: 15 },
    )
  })
})
