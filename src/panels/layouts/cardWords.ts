import type { Entry } from './entries'

export const entryName = ({ job }: Pick<Entry, 'job'>): string =>
  job.name === '' ? 'Unnamed layout' : job.name

const timeText = (ms: number): string =>
  new Date(ms).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })

export const changedText = ({ savedAtMs }: Pick<Entry, 'savedAtMs'>): string =>
  savedAtMs === 0 ? 'Changed some time ago' : `Changed ${timeText(savedAtMs)}`

export const removedText = ({ removedAtMs }: Pick<Entry, 'removedAtMs'>): string =>
  removedAtMs === null ? '' : `Removed ${timeText(removedAtMs)}`

export const countText = (count: number): string => (count === 1 ? '1 layout' : `${count} layouts`)
