import { describe, expect, it } from 'vitest'

import { weldedReport } from '../../src/cli/weldedReport'
import { planOfExample } from '../support/asWelded'
import { exampleLayout } from '../support/exampleLayouts'

describe('weldedReport', () => {
  it('says of each record what was measured, how far off it is and what is only planned', () => {
    const [record, ...more] = weldedReport(exampleLayout('dune-runner-three-point.layout.json'))
    expect(more).toEqual([])
    expect(record?.signed).toBeNull()
    expect(record?.tolerance?.xMm).toBe(3)
    expect(record?.anchors.map(({ strap, verdict }) => [strap, verdict])).toEqual([
      ['shoulder-left', 'within'],
      ['lap-left', 'outside'],
      ['lap-right', 'cannot-be-told'],
    ])
    expect(record?.anchors[1]?.position?.z.off).toBe(-5)
    expect(record?.anchors[2]?.measured).toBeNull()
    expect(record?.anchors[2]?.problem).toContain('do not meet')
    expect(record?.takenAsPlanned).toEqual(['driver-lap-right'])
    // The way to a file and back changes nothing.
    expect(JSON.parse(JSON.stringify(record))).toEqual(record)
  })

  it('gives values of both for what became tight on the car', () => {
    const [record] = weldedReport(exampleLayout('rock-buggy.layout.json'))
    const tight = record?.changes.filter(({ kind }) => kind === 'newly-tight') ?? []
    expect(tight.length).toBeGreaterThan(0)
    for (const { planned, welded } of tight) {
      expect([planned?.verdict, welded?.verdict]).toEqual(['clear', 'tight'])
      expect(typeof welded?.roomMm).toBe('number')
    }
    expect(record?.takenAsPlanned).toEqual([])
  })

  it('is empty without a record', () => {
    expect(weldedReport(planOfExample('rock-buggy.layout.json'))).toEqual([])
  })
})
