import { describe, expect, it } from 'vitest'

import { measuredLayout } from '../../../src/domain/layout/asWelded/measuredLayout'
import { addRecord, withMeasurement } from '../../../src/domain/layout/edit/asWelded'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { answerWelded } from '../../../src/state/welded/answerWelded'
import {
  createWeldedCheck,
  isSameCheck,
  measuredOf,
  shownRecord,
  weldedStanding,
} from '../../../src/state/welded/weldedCheck'
import type { WeldedAnswer, WeldedQuestion } from '../../../src/state/welded/weldedMessages'
import { coordinatesAt, planOfExample } from '../../support/asWelded'
import { fakeWorkers, nth } from '../worker/fakeWorkers'

const plan = planOfExample('rock-buggy.layout.json')
const ref = { recordId: 'welded-1', placeId: 'driver', anchorId: 'driver-lap-left' }
const recorded = withMeasurement(
  addRecord(plan),
  ref,
  coordinatesAt({ xMm: 1350, yMm: 70, zMm: 38 }, { zMm: 25 }),
)
const record = shownRecord(recorded, null)
if (record === null) throw new Error('no record')
const question: WeldedQuestion = { layout: measuredLayout(recorded, record).layout }

describe('answering for a car as welded', () => {
  it('gives the findings that evaluating the same layout gives, and survives the way to another thread', () => {
    const progress: [number, number][] = []
    const answer = answerWelded(question, (done, total) => progress.push([done, total]))
    const direct = evaluateLayout(question.layout, { extent: 'what-moves' })
    expect(answer).toEqual({ ok: true, value: direct.places.map(({ findings }) => findings) })
    expect(answer).not.toEqual({
      ok: true,
      value: evaluateLayout(plan, { extent: 'what-moves' }).places.map(({ findings }) => findings),
    })
    expect(progress).toEqual([[0, 1]])
    expect(structuredClone(answer)).toEqual(answer)
  })
})

describe('the record that is looked at', () => {
  it('is the newest while none is picked, or the picked one is gone', () => {
    const two = addRecord(recorded)
    expect(shownRecord(two, null)?.id).toBe('welded-2')
    expect(shownRecord(two, 'welded-1')?.id).toBe('welded-1')
    expect(shownRecord(two, 'welded-9')?.id).toBe('welded-2')
    expect(shownRecord(plan, 'welded-1')).toBeNull()
  })

  it('is worked out once for a layout and a record', () => {
    expect(measuredOf(recorded, record)).toBe(measuredOf(recorded, record))
    expect(measuredOf({ ...recorded }, record)).not.toBe(measuredOf(recorded, record))
  })
})

describe('findings of a car as welded', () => {
  it('still hold when the job, the units or another record change, and not when an anchor, a tube or the rules do', () => {
    const { layout } = question
    const renamed = {
      ...layout,
      job: { ...layout.job, name: 'x' },
      units: { ...layout.units, length: 'in' as const },
    }
    expect(isSameCheck(question, { layout: renamed })).toBe(true)
    expect(isSameCheck(question, structuredClone(question))).toBe(true)
    expect(isSameCheck(question, { layout: { ...layout, ruleSetId: 'other' } })).toBe(false)
    expect(isSameCheck(question, { layout: { ...layout, tubes: layout.tubes.slice(1) } })).toBe(false)
    const elsewhere = withMeasurement(recorded, ref, coordinatesAt({ xMm: 1350, yMm: 70, zMm: 38 }))
    const moved = shownRecord(elsewhere, null)
    if (moved === null) throw new Error('no record')
    expect(isSameCheck(question, { layout: measuredLayout(elsewhere, moved).layout })).toBe(false)
  })

  it('are wanted, worked out, there; and after a failure wanted only when somebody says so', () => {
    const workers = fakeWorkers<WeldedQuestion, WeldedAnswer>()
    const check = createWeldedCheck(workers.open)
    const standing = () => weldedStanding(question, check.state.getState())
    expect(standing()).toMatchObject({ isWanted: true, isRunning: false, isFresh: false, ended: null })
    check.start(question)
    expect(standing()).toMatchObject({ isWanted: false, isRunning: true, isFresh: false })
    nth(workers.workers, 0).die('out of memory')
    expect(standing()).toMatchObject({ isWanted: false, isRunning: false, findings: null })
    expect(standing().ended).toMatchObject({ kind: 'failed', message: 'out of memory' })
    check.start(question)
    nth(workers.workers, 1).say({ kind: 'answer', answer: answerWelded(question) })
    expect(standing()).toMatchObject({ isWanted: false, isRunning: false, isFresh: true, ended: null })
    // Of another layout they are old.
    const other = { layout: { ...question.layout, tubes: question.layout.tubes.slice(1) } }
    expect(weldedStanding(other, check.state.getState())).toMatchObject({ isWanted: true, isFresh: false })
  })
})
