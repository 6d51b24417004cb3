import { describe, expect, it } from 'vitest'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import {
  withoutRevision,
  withRevision,
  withRevisionAdded,
} from '../../../../src/domain/layout/edit/changeRevisions'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')

describe('revision history', () => {
  it('begins a line with what the job says now, and changes no line by itself', () => {
    const one = withRevisionAdded(rock)
    const { revision, date, preparedBy } = rock.job
    expect(one.job.revisions).toEqual([{ revision, date, by: preparedBy, change: '' }])
    const later = withRevisionAdded({ ...one, job: { ...one.job, revision: 'B', preparedBy: 'Someone' } })
    expect(later.job.revisions?.[0]).toEqual(one.job.revisions?.[0])
    expect(later.job.revisions?.[1]).toMatchObject({ revision: 'B', by: 'Someone' })
  })

  it('changes the line that is meant, and no other', () => {
    const two = withRevisionAdded(withRevisionAdded(rock))
    const changed = withRevision(two, 1, { change: 'Bar up 22 mm' })
    expect(changed.job.revisions?.map(({ change }) => change)).toEqual(['', 'Bar up 22 mm'])
    expect(withRevision(two, 2, { change: 'nothing there' })).toBe(two)
  })

  it('leaves no empty list behind', () => {
    expect(withoutRevision(withRevisionAdded(rock), 0)).toEqual(rock)
    expect(withoutRevision(rock, 0)).toBe(rock)
  })

  it('stops at as many lines as a file may hold', () => {
    let layout = rock
    for (let line = 0; line < 70; line += 1) layout = withRevisionAdded(layout)
    expect(parseLayoutText(layoutText(layout)).ok).toBe(true)
    expect(withRevisionAdded(layout)).toBe(layout)
  })

  it('refuses a day that the calendar does not have, and says which line', () => {
    const layout = withRevision(withRevisionAdded(rock), 0, { date: '2026-02-30' })
    const parsed = parseLayoutText(layoutText(layout))
    if (parsed.ok) throw new Error('it was taken')
    expect(parsed.error.map(({ path }) => path)).toEqual(['job.revisions[0].date'])
    expect(parsed.error[0]?.message).toContain('there is no day 2026-02-30')
  })

  it('comes back from a file as it was', () => {
    const layout = withRevision(withRevisionAdded(rock), 0, { change: 'First issue', date: '2026-11-02' })
    const parsed = parseLayoutText(layoutText(layout))
    expect(parsed).toEqual({ ok: true, value: layout })
  })
})
