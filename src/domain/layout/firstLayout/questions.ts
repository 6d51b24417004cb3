import type { Layout } from '../document/layout'
import { lapQuestion, shoulderQuestion, subQuestion } from './anchorQuestions'
import { beltQuestion } from './beltQuestion'
import { datumQuestion, jobQuestion, peopleQuestion } from './jobQuestions'
import type { Question } from './question'
import { ruleQuestion } from './ruleQuestion'
import { hipHeightQuestion, reclineQuestion, seatQuestion, slideQuestion } from './seatQuestions'
import { slotQuestion } from './slotQuestion'
import { barQuestion, tubesQuestion } from './tubeQuestions'

/** Every question, in the order in which a person measures a car; each start may look at what was asked before it. */
export const QUESTIONS: readonly Question[] = [
  jobQuestion,
  datumQuestion,
  seatQuestion,
  reclineQuestion,
  hipHeightQuestion,
  slideQuestion,
  peopleQuestion,
  beltQuestion,
  barQuestion,
  tubesQuestion,
  lapQuestion,
  shoulderQuestion,
  subQuestion,
  slotQuestion,
  ruleQuestion,
]

/** The questions that this layout is asked: without those about straps that its belt does not have. */
export const askedQuestions = (layout: Layout): readonly Question[] =>
  QUESTIONS.filter(({ isAsked }) => isAsked(layout))
