import type { RuleSource } from '../rule'

/** A section of the student car rules, read as text; `phrase` is quoted only where the words themselves were kept. */
export const studentSource = (section: string, phrase: string | null): RuleSource => ({
  document: 'Formula SAE Rules',
  section,
  edition: '2026 V1',
  status: 'read',
  phrase,
})

/** A section of the European student rules derived from them, read as text. */
export const studentDerivativeSource = (section: string, phrase: string | null): RuleSource => ({
  document: 'Formula Student derivative rules',
  section,
  edition: 'February 2025',
  status: 'read',
  phrase,
})
