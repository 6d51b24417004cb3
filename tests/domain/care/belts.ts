import type { BeltEntry, BeltEvent, BeltFacts, BeltRecord } from '../../../src/domain/care/beltRecord'
import { INSPECTION_ITEM_IDS, type InspectionItemId } from '../../../src/domain/care/inspection'

export const facts = (change: Partial<BeltFacts> = {}): BeltFacts => ({
  name: 'Left harness',
  standard: 'sfi-16.1',
  serial: 'A 1204',
  manufactured: '2025-03-15',
  labelYear: null,
  fitted: '',
  ...change,
})

export const belt = (change: Partial<BeltRecord> = {}): BeltRecord => ({
  id: 'belt-1',
  placeId: 'driver',
  ...facts(),
  entries: [],
  ...change,
})

export const entry = (
  id: string,
  event: BeltEvent,
  change: Partial<Pick<BeltEntry, 'date' | 'by' | 'note'>> = {},
): BeltEntry => ({ id, date: '2026-04-01', by: 'Kit', note: '', ...change, ...event })

/** An inspection in which everything was looked at and sound but for these items. */
export const inspection = (...faults: readonly InspectionItemId[]): BeltEvent => ({
  kind: 'inspection',
  results: Object.fromEntries(
    INSPECTION_ITEM_IDS.map((id) => [id, faults.includes(id) ? 'fault' : 'sound'] as const),
  ),
})
