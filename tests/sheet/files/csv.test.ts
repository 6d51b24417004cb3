import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { HyperFormula } from 'hyperformula'
import { describe, expect, it } from 'vitest'
import { type CsvCell, csvText, harmless } from '../../../src/sheet/files/csv'

/*
 * Outside: the package csv-parse reads the files back; the spreadsheet engine of the package hyperformula says what is a formula.
 * Rules: RFC 4180, sections 2.1 to 2.7; OWASP, "CSV Injection".
 */

const read = (text: string, options: object = {}): readonly (readonly string[])[] =>
  parse(text, { bom: true, ...options }) as unknown as readonly (readonly string[])[]

const HOSTILE = [
  '=1+1',
  '+1',
  '-2+3',
  '@SUM(A1)',
  '\t=1',
  '\r=1',
  '\n=1',
  ' =1',
  '＝1+1',
  '＋1',
  '－1',
  '＠A1',
  '\u200B=1',
  '\uFEFF=1',
  '"=1',
  'a";=1+1',
  'a;=1+1',
  'a,=1+1',
  'a|=cmd',
  "=cmd|' /C calc'!A0",
  '=HYPERLINK("http://example.org/?"&A1,"look")',
  "'=1",
] as const

const anyText = fc.oneof(
  fc.string(),
  fc.string({ unit: 'binary' }),
  fc.constantFrom(...HOSTILE),
  fc
    .array(fc.constantFrom('=', '-', '"', "'", ';', ',', ' ', '\n', '\t', 'a', '1', '\u200B'))
    .map((letters) => letters.join('')),
)

/** Whether a spreadsheet would compute this cell instead of showing it. */
const isFormula = (text: string): boolean => {
  const sheet = HyperFormula.buildFromArray([[text]], { licenseKey: 'gpl-v3' })
  try {
    return sheet.doesCellHaveFormula({ sheet: 0, row: 0, col: 0 })
  } finally {
    sheet.destroy()
  }
}

describe('csvText', () => {
  it('gives numbers and plain texts back, in as many fields in every row', () => {
    const cell: fc.Arbitrary<CsvCell> = fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.stringMatching(/^[A-Za-z0-9 ",;/°Øé]{0,20}$/),
      fc.constant(null),
    )
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { maxLength: 5 }), (rows) => {
        const [header, ...found] = read(csvText({ columns: ['a (mm)', 'b', 'c'], rows }))
        expect(header).toEqual(['a (mm)', 'b', 'c'])
        expect(found).toHaveLength(rows.length)
        const off = rows.flatMap((row, index) =>
          row.filter((wanted, column) => {
            const is = found[index]?.[column] ?? 'nothing'
            if (typeof wanted !== 'number') return is !== (wanted ?? '')
            return !/^-?\d+(\.\d+)?$/.test(is) || Math.abs(Number(is) - wanted) > 5.1e-7
          }),
        )
        expect(off).toEqual([])
      }),
    )
  })

  it('is UTF-8 with its mark, ends every row with CRLF and never breaks one', () => {
    const text = csvText({ columns: ['name'], rows: [['two\nlines'], ['three\r\nlines\u2028more']] })
    expect(text).toBe('\uFEFF"name"\r\n"two lines"\r\n"three lines more"\r\n')
  })

  it('leaves a negative number a number, and never writes a minus zero or an exponent', () => {
    const text = csvText({ columns: ['x'], rows: [[-12.5], [-0.000_000_01], [1e-7], [-0], [1e6]] })
    expect(text).toBe('\uFEFF"x"\r\n-12.5\r\n0\r\n0\r\n0\r\n1000000\r\n')
  })

  it('refuses what would spoil the table', () => {
    expect(() => csvText({ columns: ['x'], rows: [[NaN]] })).toThrow('NaN')
    expect(() => csvText({ columns: ['x'], rows: [[1, 2]] })).toThrow('2 cells')
  })

  it('holds no cell that a spreadsheet computes, whichever separator it is set to', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyText, anyText), { minLength: 1, maxLength: 3 }), (rows) => {
        const text = csvText({
          columns: ['name', 'x', 'note'],
          rows: rows.map(([a, b]) => [a, -1.5, b]),
        })
        expect(
          read(text)
            .slice(1)
            .map((row) => row[1]),
        ).toEqual(rows.map(() => '-1.5'))
        // The most careless reader: cuts at its separator wherever it stands, and drops quotes.
        for (const delimiter of [',', ';', '|', '\t']) {
          const cells = read(text, { delimiter, quote: false, relax_column_count: true }).flat()
          // Only what was a number begins with a sign, and it is no formula.
          const bad = cells.filter(
            (cell) => /^[\s\p{Cf}"]*[=+@＝＋－＠-]/u.test(cell) && !cell.startsWith('-1.5'),
          )
          expect(bad).toEqual([])
        }
      }),
    )
  })
})

describe('harmless', () => {
  it.each(HOSTILE)('takes the sting out of %j', (text) => {
    const found = harmless(text)
    expect(isFormula(found)).toBe(false)
    expect(found).not.toMatch(/(^|[,;|])[\s\p{Cf}"]*[=+@＝＋－＠-]/u)
    expect(harmless(found).replaceAll("'", '')).toBe(found.replaceAll("'", ''))
  })

  it('knows a formula when it sees one', () => {
    // The engine itself, so that the check above cannot be empty.
    expect(isFormula('=1+1')).toBe(true)
    expect(isFormula("'=1+1")).toBe(false)
  })

  it.each(['Left lap tab', '12 5/16 in', '−5 mm', 'A-arm', 'x = 3', 'a@b', '45°', ''])(
    'leaves %j as it is',
    (text) => {
      expect(harmless(text)).toBe(text)
    },
  )
})
