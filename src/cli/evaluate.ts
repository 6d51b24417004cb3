import { readFileSync } from 'node:fs'

import type { Layout } from '../domain/layout/document/layout'
import { parseLayoutText } from '../domain/layout/document/parseLayout'
import { type EvaluationReport, evaluationReport, isMustBroken, uncheckedCount } from './evaluationReport'
import { fitReport } from './fitReport'
import { weldedReport } from './weldedReport'
import { isVariantWord, VARIANT_USAGE, variantWord, withVariantNamed } from './variantChoice'
import { isProposeWord, PROPOSE_USAGE, proposeReport, type ProposeWords, proposeWords } from './proposeReport'

/*
 * Prints one JSON document for each layout file, one after the other. Exit code: 0 clean, 1 a "must" is broken, 2 a file is
 * unusable (the message says where and why; the other files are still printed). `--fit` adds how many surveyed people pass,
 * `--as-welded` what was measured on the car and what that changes, `--propose` positions with the most worst-case room; `--variant=NAME`
 * looks at another variant than the drawn one.
 */

const EXIT = { clean: 0, mustBroken: 1, unusable: 2 } as const

const complain = (file: string, lines: readonly string[]): void => {
  process.stderr.write(`${lines.map((line) => `${file}: ${line}`).join('\n')}\n`)
}

const readText = (file: string): string | null => {
  try {
    return readFileSync(file, 'utf8')
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason'
    const why = { ENOENT: 'there is no such file', EISDIR: 'it is a folder', EACCES: 'it may not be read' }[
      code
    ]
    complain(file, [`cannot be read: ${why ?? code}.`])
    return null
  }
}

interface Report extends EvaluationReport {
  readonly fit?: ReturnType<typeof fitReport>
  readonly asWelded?: ReturnType<typeof weldedReport>
  readonly propose?: ReturnType<typeof proposeReport>
}

/** What is wanted beside the evaluation. */
interface Wanted {
  readonly fit: boolean
  readonly asWelded: boolean
  readonly propose: ProposeWords | null
  /** The name of the variant that is looked at; null: the drawn one. */
  readonly variant: string | null
}

const reportOf = (file: string, wanted: Wanted): Report | null => {
  const text = readText(file)
  if (text === null) return null
  const parsed = parseLayoutText(text)
  if (!parsed.ok) {
    complain(
      file,
      parsed.error.map(
        ({ path, message, remedy }) => `${path === '' ? '' : `${path}: `}${message} ${remedy}`,
      ),
    )
    return null
  }
  const chosen = withVariantNamed(parsed.value, wanted.variant)
  if (chosen.ok) return reportOn(file, chosen.value, wanted)
  complain(file, [chosen.error])
  return null
}

const reportOn = (file: string, layout: Layout, wanted: Wanted): Report => ({
  ...evaluationReport(file, layout),
  ...(wanted.fit ? { fit: fitReport(layout) } : {}),
  ...(wanted.asWelded ? { asWelded: weldedReport(layout) } : {}),
  ...(wanted.propose === null ? {} : { propose: proposeReport(layout, wanted.propose) }),
})

const exitCodeFor = (file: string, wanted: Wanted): number => {
  const report = reportOf(file, wanted)
  if (report === null) return EXIT.unusable
  process.stdout.write(`${JSON.stringify(report, null, 2)}\n`)
  const unchecked = uncheckedCount(report)
  if (unchecked > 0) complain(file, [`${unchecked} findings could not be checked; that is not approval.`])
  return isMustBroken(report) ? EXIT.mustBroken : EXIT.clean
}

/** The exit code of a whole command. */
const run = (words: readonly string[]): number => {
  const files = words.filter(
    (word) => word !== '--fit' && word !== '--as-welded' && !isVariantWord(word) && !isProposeWord(word),
  )
  if (files.length === 0) {
    process.stderr.write(
      `Name one or more layout files: npm run --silent evaluate -- [--fit] [--as-welded] [${VARIANT_USAGE}] [${PROPOSE_USAGE}] FILE…\n`,
    )
    return EXIT.unusable
  }
  const propose = words.includes('--propose') ? proposeWords(words) : null
  if (propose?.ok === false) {
    process.stderr.write(`${propose.error}\n`)
    return EXIT.unusable
  }
  const wanted = {
    fit: words.includes('--fit'),
    asWelded: words.includes('--as-welded'),
    propose: propose?.value ?? null,
    variant: variantWord(words),
  }
  return Math.max(...files.map((file) => exitCodeFor(file, wanted)))
}

process.exitCode = run(process.argv.slice(2))
