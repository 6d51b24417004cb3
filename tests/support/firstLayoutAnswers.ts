import fc from 'fast-check'
import { begunFresh } from '../../src/domain/layout/firstLayout/answer'
import { withAnswer } from '../../src/domain/layout/firstLayout/answer'
import type { Answer, Ask } from '../../src/domain/layout/firstLayout/question'
import { askedQuestions, QUESTIONS } from '../../src/domain/layout/firstLayout/questions'
import type { Layout } from '../../src/domain/layout/document/layout'

/** One answer to one ask. */
export interface Given {
  readonly id: string
  readonly answer: Answer
}

/** Every ask that can come up, whatever was chosen before: asks of other arrangements and tubes among them. */
const everyAsk = (): readonly Ask[] => {
  const starts = [
    [],
    ['belt.arrangement', '7'],
    ['belt.arrangement', '3'],
    ['tubes.kind', 'cross'],
    ['tubes.kind', 'sides'],
    ['shoulder.kind', 'tab'],
    ['slots.shoulder', 'yes'],
    ['slots.lap', 'yes'],
  ] as const
  const found = starts.flatMap(([id, answer]) => {
    const { layout, progress } =
      id === undefined || answer === undefined ? begunFresh() : withAnswer(begunFresh(), id, answer)
    return QUESTIONS.filter(({ isAsked }) => isAsked(layout)).flatMap(({ asks }) =>
      asks(layout, progress.begun),
    )
  })
  return [...new Map(found.map((ask) => [ask.id, ask])).values()]
}

const answerTo = ({ id, entry }: Ask): readonly fc.Arbitrary<Given>[] => {
  const given = <Value extends Answer>(value: fc.Arbitrary<Value>): fc.Arbitrary<Given>[] => [
    value.map((answer) => ({ id, answer })),
  ]
  switch (entry.kind) {
    case 'length':
    case 'angle':
    case 'mass': {
      const { min, max } = entry.limits
      return given(fc.double({ min, max, noNaN: true }).map((value) => Math.round(value * 10) / 10 + 0))
    }
    case 'choice':
      return given(fc.constantFrom(...entry.choices.map(({ value }) => value)))
    case 'text':
      return given(fc.string({ maxLength: 20 }))
    case 'kept':
      return []
  }
}

/** Answers within the limits to any of what can be asked, in any order, some of them more than once. */
export const givenAnswers: fc.Arbitrary<readonly Given[]> = fc.array(
  fc.oneof(...everyAsk().flatMap(answerTo)),
  {
    maxLength: 25,
  },
)

/** What a layout says apart from the order in which its parts came about and the numbers of its slots; rounded to 0.1 µm. */
export const inOneOrder = (layout: Layout): unknown => {
  const rounded: unknown = JSON.parse(
    JSON.stringify(layout, (_key, value: unknown) =>
      typeof value === 'number' ? Math.round(value * 1e4) / 1e4 + 0 : value,
    ),
  )
  const { tubes, places, ...rest } = rounded as Layout
  return {
    ...rest,
    tubes: tubes.toSorted((a, b) => a.id.localeCompare(b.id)),
    places: places.map((place) => ({
      ...place,
      anchors: place.anchors.toSorted((a, b) => a.strap.localeCompare(b.strap)),
      seat: {
        ...place.seat,
        slots: place.seat.slots
          .map(({ id: _id, ...slot }) => slot)
          .toSorted((a, b) => a.straps.join().localeCompare(b.straps.join())),
      },
    })),
  }
}

/** Asks of a layout that somebody sees. */
export const shownAsks = (layout: Layout): readonly Ask[] => {
  const { begun } = begunFresh().progress
  return askedQuestions(layout)
    .flatMap(({ asks }) => asks(layout, begun))
    .filter(({ entry }) => entry.kind !== 'kept')
}
