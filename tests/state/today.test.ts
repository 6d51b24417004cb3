import { execFileSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'

import { today } from '../../src/state/today'

/** The date in a time zone, by another process: a zone is fixed when one starts. */
const dateIn = (zone: string, ms: number): string =>
  execFileSync(
    process.execPath,
    [
      '--import',
      'tsx',
      '--input-type=module',
      '-e',
      `import { today } from './src/state/today.ts'; process.stdout.write(today(() => ${ms}))`,
    ],
    {
      env: { ...process.env, TZ: zone },
      encoding: 'utf8',
    },
  )

describe('today', () => {
  it('is a calendar date with leading zeros', () => {
    expect(today(() => new Date(2026, 2, 5, 13).getTime())).toBe('2026-03-05')
    expect(today(() => new Date(2026, 10, 27, 0, 0, 0, 0).getTime())).toBe('2026-11-27')
    expect(today(() => new Date(2026, 10, 27, 23, 59, 59, 999).getTime())).toBe('2026-11-27')
  })

  it('is the date where the page is looked at, not that of Greenwich', () => {
    const ms = Date.UTC(2026, 10, 27, 3, 30)
    // UTC−7 in winter and UTC+13 in summer. Source: IANA time zone database (from memory).
    expect(dateIn('America/Denver', ms)).toBe('2026-11-26')
    expect(dateIn('Pacific/Auckland', Date.UTC(2026, 10, 27, 12, 30))).toBe('2026-11-28')
  })
})
