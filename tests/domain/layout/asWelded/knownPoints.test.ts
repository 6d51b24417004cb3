import { describe, expect, it } from 'vitest'

import { offeredPoints } from '../../../../src/domain/layout/asWelded/knownPoints'
import { recordDeviations } from '../../../../src/domain/layout/asWelded/deviation'
import { measuredAt, planOfExample, recordWith } from '../../../support/asWelded'

const PLAN = planOfExample('rock-buggy.layout.json')
const RECORD = recordWith(PLAN, (entry) =>
  entry.strap === 'lap-left' ? measuredAt(entry, PLAN, { xMm: 4 }) : entry,
)
const own = (anchorId: string) => ({ placeId: 'driver', anchorId })

describe('offeredPoints', () => {
  it('are what a tape can be held to, the datum first, and other anchors where they were measured', () => {
    const offered = offeredPoints(PLAN, RECORD, own('driver-sub-left'))
    expect(offered[0]).toMatchObject({ sort: 'place', place: { source: { kind: 'datum-mark' } } })
    const named = offered.flatMap((each) =>
      each.sort === 'place' && each.place.source.kind === 'named' ? [each.point] : [],
    )
    expect(named).toEqual((PLAN.tapePoints ?? []).map(({ point }) => point))
    const measured = offered.filter(({ sort }) => sort === 'measured')
    expect(measured.map(({ point }) => point)).toEqual([{ xMm: 1354, yMm: 70, zMm: 38 }])
  })

  it('never offer an anchor to itself, nor one that has no position', () => {
    const offered = offeredPoints(PLAN, RECORD, own('driver-lap-left'))
    expect(offered.filter(({ sort }) => sort === 'measured')).toEqual([])
  })

  it('do not move what was measured from them when the plan changes', () => {
    const [from] = offeredPoints(PLAN, RECORD, own('driver-lap-right')).filter(
      (each) => each.sort === 'place' && each.place.source.kind === 'named',
    )
    if (from === undefined) throw new Error('the example has no named point')
    const record = recordWith(PLAN, (entry) =>
      entry.strap === 'lap-right'
        ? {
            ...entry,
            measurement: {
              kind: 'angle',
              from: { name: 'P', point: from.point },
              stringDeg: [-10],
              lengthMm: [500],
              runs: 'rearward',
              aside: { kind: 'y', readingsMm: [20] },
            },
          }
        : entry,
    )
    const before = recordDeviations(PLAN, record)
    const { tapePoints: _points, ...without } = PLAN
    expect(recordDeviations(without, record)).toEqual(before)
  })
})
