import { createStore, type StoreApi } from 'zustand/vanilla'
import { measuredLayout, type MeasuredLayout } from '../../domain/layout/asWelded/measuredLayout'
import type { Layout } from '../../domain/layout/document/layout'
import type { AsWeldedRecord } from '../../domain/measure/asWeldedRecord'
import type { Finding } from '../../domain/rules/finding'
import { isSameValue } from '../sameValue'
import { createTask, type Task } from '../worker/task'
import type { OpenWorker } from '../worker/workerRunner'
import type { WeldedAnswer, WeldedFindings, WeldedQuestion } from './weldedMessages'

/** How records are looked at. */
interface WeldedView {
  /** The record that was picked; null, or one that is gone: the newest. */
  readonly recordId: string | null
  /** The entry that is being measured, which the drawing picks out; null: none. */
  readonly anchorId: string | null
  /** Whether the records are in view, so that the drawing marks what was measured. */
  readonly isInView: boolean
}

/** The findings of a car as welded, and how records are looked at. */
export interface WeldedCheck extends Task<WeldedQuestion, WeldedFindings, never> {
  readonly view: Pick<StoreApi<WeldedView>, 'getState' | 'getInitialState' | 'subscribe' | 'setState'>
}

export const createWeldedCheck = (open: OpenWorker<WeldedQuestion, WeldedAnswer>): WeldedCheck => ({
  ...createTask(open),
  view: createStore<WeldedView>(() => ({ recordId: null, anchorId: null, isInView: false })),
})

/** The record that is looked at: the picked one, else the newest; null when there is none. */
export const shownRecord = (
  layout: Pick<Layout, 'asWelded'>,
  recordId: string | null,
): AsWeldedRecord | null =>
  layout.asWelded?.find(({ id }) => id === recordId) ?? layout.asWelded?.at(-1) ?? null

let lastMeasured: {
  readonly layout: Layout
  readonly record: AsWeldedRecord
  readonly measured: MeasuredLayout
} | null = null

/** The layout as a record has it, the same object as long as neither changes. */
export const measuredOf = (layout: Layout, record: AsWeldedRecord): MeasuredLayout => {
  if (lastMeasured?.layout === layout && lastMeasured.record === record) return lastMeasured.measured
  const measured = measuredLayout(layout, record)
  lastMeasured = { layout, record, measured }
  return measured
}

/** All of a measured layout that its findings look at. */
const checked = ({ places, tubes, ruleSetId, ownRuleSets, confirmedDocuments, dustyOrMuddyUse }: Layout) => ({
  places,
  tubes,
  ruleSetId,
  ownRuleSets,
  confirmedDocuments,
  dustyOrMuddyUse,
})

/** Whether findings of one measured layout still hold for another. */
export const isSameCheck = (a: WeldedQuestion, b: WeldedQuestion): boolean =>
  a.layout === b.layout || isSameValue(checked(a.layout), checked(b.layout))

/** Findings of all places in one list. */
export const allFindings = (findings: WeldedFindings): readonly Finding[] => findings.flat()

type TaskState = ReturnType<WeldedCheck['state']['getState']>

/** How the check of one measured layout stands. */
export interface WeldedStanding {
  /** The last findings, which are of another layout while `isFresh` is not so. */
  readonly findings: WeldedFindings | null
  readonly isFresh: boolean
  readonly isRunning: boolean
  /** Why it came to nothing; null where it did not. */
  readonly ended: TaskState['ended']
  /** Nobody is at it, and it did not come to nothing before. */
  readonly isWanted: boolean
}

export const weldedStanding = (
  question: WeldedQuestion,
  { running, last, ended }: TaskState,
): WeldedStanding => {
  const isThis = (other: WeldedQuestion | undefined): boolean =>
    other !== undefined && isSameCheck(other, question)
  const isFresh = isThis(last?.question)
  const isRunning = isThis(running?.question)
  const isEnded = isThis(ended?.question)
  return {
    findings: last?.value ?? null,
    isFresh,
    isRunning,
    ended: isEnded ? ended : null,
    isWanted: !isFresh && !isRunning && !isEnded,
  }
}
