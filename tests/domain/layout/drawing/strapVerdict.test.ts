import { describe, expect, it } from 'vitest'
import { strapVerdict } from '../../../../src/domain/layout/drawing/strapVerdict'
import type { Finding } from '../../../../src/domain/rules/finding'

describe('strapVerdict', () => {
  const finding = (subject: Finding['subject'], verdict: Finding['verdict']): Finding =>
    ({ subject, verdict }) as Finding

  it('is the worst of the strap and its pair', () => {
    const findings = [
      finding('lap-left', 'clear'),
      finding('lap-pair', 'tight'),
      finding('shoulder-left', 'broken'),
    ]
    expect(strapVerdict(findings, 'lap-left')).toBe('tight')
    expect(strapVerdict(findings, 'shoulder-left')).toBe('broken')
    expect(strapVerdict(findings, 'shoulder-right')).toBe('none')
  })

  it('never shows an unchecked strap as clear', () => {
    expect(strapVerdict([finding('lap-left', 'clear'), finding('lap-left', 'unchecked')], 'lap-left')).toBe(
      'none',
    )
    expect(strapVerdict([finding('lap-left', 'unchecked'), finding('lap-left', 'broken')], 'lap-left')).toBe(
      'broken',
    )
  })
})
