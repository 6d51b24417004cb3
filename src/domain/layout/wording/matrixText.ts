import type { Agreement, MatrixRow } from '../evaluate/ruleSetMatrix'

/** How the sets stand to each other on one row, as one short plain sentence. */
export const agreementText = ({ agreement, entries }: Pick<MatrixRow, 'agreement' | 'entries'>): string => {
  const broken = new Set(entries.filter(({ verdict }) => verdict === 'broken').map(({ setId }) => setId)).size
  const all = new Set(entries.map(({ setId }) => setId)).size
  switch (agreement) {
    case 'no-value':
      return all === 1
        ? 'No value keeps all the limits of this set.'
        : 'Sources disagree: no value keeps all of these limits.'
    case 'split':
      return all === 1
        ? 'Part of what this set asks for is broken.'
        : `Sources disagree: broken under ${broken} of ${all}.`
    case 'kept':
      return 'Kept under all that ask for it.'
    case 'broken':
      return 'Broken under all that ask for it.'
    case 'unchecked':
      return 'Could not be checked.'
  }
}

/** Whether a row shows sources that ask for different things. */
export const isDisagreement = (agreement: Agreement): boolean =>
  agreement === 'no-value' || agreement === 'split'
