import { deflateRawSync, inflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { parseLayoutText } from '../../../src/domain/layout/document/parseLayout'
import { crc32 } from '../../../src/state/share/crc32'
import { DICTIONARY_TEXT } from '../../../src/state/share/dictionary'
import { type Carried, carriedIn, fragmentOf } from '../../../src/state/share/fragment'
import { shortened } from '../../../src/state/share/shortWords'
import { layoutArb } from '../../support/arbitraries'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'

const dictionary = new TextEncoder().encode(shortened(DICTIONARY_TEXT))

/** What anybody could make who knows the format, packed by Node's zlib. */
const handMade = (plain: Uint8Array, check = crc32(plain), head = '#layout1.'): string => {
  const start = Buffer.alloc(4)
  start.writeUInt32BE(check)
  return head + Buffer.concat([start, deflateRawSync(plain, { dictionary })]).toString('base64url')
}
const asItIs = (text: string): Uint8Array => Buffer.concat([Uint8Array.of(0), Buffer.from(text)])
const shortJson = (json: string): Uint8Array => Buffer.concat([Uint8Array.of(1), Buffer.from(json)])

const message = (fragment: string): string => {
  const carried = carriedIn(fragment)
  return carried.ok ? `carried ${JSON.stringify(carried.value)?.slice(0, 40)}` : carried.error
}

describe('fragmentOf', () => {
  it.each(['layout', 'proposal', 'answer'] as const)('gives a %s back letter for letter', (kind) => {
    const carried: Carried = { kind, text: layoutText(exampleLayout('rock-buggy.layout.json')) }
    expect(carriedIn(fragmentOf(carried))).toEqual({ ok: true, value: carried })
    expect(carriedIn(fragmentOf(carried).slice(1))).toEqual({ ok: true, value: carried })
  })

  it('gives any layout back letter for letter, and the layout with it', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        const text = layoutText(layout)
        const carried = carriedIn(fragmentOf({ kind: 'layout', text }))
        expect(carried).toEqual({ ok: true, value: { kind: 'layout', text } })
        expect(parseLayoutText(text)).toEqual({ ok: true, value: layout })
      }),
    )
  })

  it('gives any text back letter for letter, JSON or not', () => {
    const anyText = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.json(),
      fc.jsonValue().map((value) => `${JSON.stringify(value, null, 2)}\n`),
      fc.constantFrom('', '-0\n', '1.0\n', '{"a":1,"a":2}', '\uFEFF{}\n', '"\\u0000\\u001f"\n'),
    )
    fc.assert(
      fc.property(anyText, (text) => {
        expect(carriedIn(fragmentOf({ kind: 'proposal', text }))).toEqual({
          ok: true,
          value: { kind: 'proposal', text },
        })
      }),
    )
  })

  it('uses only characters that no address needs to escape: RFC 3986, section 2.3', () => {
    for (const { file } of exampleIndex) {
      const fragment = fragmentOf({ kind: 'layout', text: layoutText(exampleLayout(file)) })
      expect(fragment).toMatch(/^#[A-Za-z0-9._~-]+$/)
      expect(new URL(fragment, 'https://example.org/app/').hash).toBe(fragment)
    }
  })

  it('is what Node’s zlib inflates with the same dictionary, behind the check sum of it', () => {
    const text = layoutText(exampleLayout('trail-car-two-seat.layout.json'))
    const bytes = Buffer.from(fragmentOf({ kind: 'layout', text }).slice('#layout1.'.length), 'base64url')
    const plain = inflateRawSync(bytes.subarray(4), { dictionary })
    expect(bytes.readUInt32BE(0)).toBe(crc32(plain))
    expect(plain.subarray(1).toString()).toBe(shortened(JSON.stringify(JSON.parse(text))))
  })

  /** Measured with this dictionary; a longer link is a worse one, and a worse dictionary breaks every link that is out already. */
  const LENGTHS: Readonly<Record<string, number>> = {
    'nearly-empty.layout.json': 388,
    'rally-buggy-crossed-straps.layout.json': 1163,
    'road-fixed-seat.layout.json': 1100,
    'hill-climber-joined-straps.layout.json': 1260,
    'everything-wrong.layout.json': 1307,
    'student-racer-under-thighs.layout.json': 1505,
    'dune-runner-three-point.layout.json': 1655,
    'desert-single-thick-shell.layout.json': 1765,
    'rock-buggy.layout.json': 1939,
    'trail-car-two-seat.layout.json': 1736,
  }

  it('has the dictionary that format 1 went out with', () => {
    expect([dictionary.length, crc32(dictionary)]).toEqual([9923, 2_441_018_721])
  })

  it.each(exampleIndex.map(({ file }) => [file, LENGTHS[file] ?? 0] as const))(
    'carries the example %s in at most %i characters',
    (file, characters) => {
      const { length } = fragmentOf({ kind: 'layout', text: layoutText(exampleLayout(file)) })
      expect(length).toBeLessThanOrEqual(characters)
    },
  )
})

describe('carriedIn', () => {
  const sound = fragmentOf({ kind: 'layout', text: layoutText(exampleLayout('nearly-empty.layout.json')) })
  const text = layoutText(exampleLayout('nearly-empty.layout.json'))

  it.each([
    '',
    '#',
    '#panels',
    '#drawing',
    '#/layout1.abc',
    '#javascript:alert(1)',
    '#data:text/html,x',
    '#layouts',
    '#answers1.x',
  ])('takes %s for an ordinary address', (fragment) => {
    expect(carriedIn(fragment)).toEqual({ ok: true, value: null })
  })

  it('says of a link of another version that it is one', () => {
    expect(message(sound.replace('#layout1.', '#layout2.'))).toContain('another version')
    expect(message('#answer99999999999999999999.abc')).toContain('another version')
  })

  it('says of every shortened link that it was cut off', () => {
    for (let length = '#layout'.length; length < sound.length; length += 1)
      expect(message(sound.slice(0, length))).toContain('cut off')
  })

  it('says of every changed letter that the link is damaged, wherever it is, and never reads another layout', () => {
    const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_%.~ \u0000é'
    fc.assert(
      fc.property(
        fc.integer({ min: '#layout1.'.length, max: sound.length - 1 }),
        fc.constantFrom(...letters.split('')),
        (at, letter) => {
          const changed = sound.slice(0, at) + letter + sound.slice(at + 1)
          const carried = carriedIn(changed)
          // The last letter has bits that belong to no byte.
          expect(carried.ok ? carried.value?.text === text : carried.error.includes('damaged')).toBe(true)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('survives anything at all behind its own name', () => {
    expect.hasAssertions()
    fc.assert(
      fc.property(
        fc.constantFrom('#layout1.', '#proposal1.', '#answer1.', '#layout', '#'),
        fc.oneof(
          fc.base64String(),
          fc.string({ unit: 'binary' }),
          fc.uint8Array().map((bytes) => Buffer.from(bytes).toString('base64url')),
        ),
        (head, rest) => {
          const carried = carriedIn(head + rest)
          expect(carried.ok ? '' : carried.error).toMatch(/^$|^The link .*\.$/)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('stops at its cap while it inflates: a gigabyte of zeros in a megabyte costs next to nothing', () => {
    // Blocks of a deflate stream of zeros, repeated: what a gigabyte of zeros is deflated to, without making a gigabyte.
    const million = deflateRawSync(Buffer.alloc(1_000_000), { level: 9, finishFlush: 2 })
    expect(inflateRawSync(million, { finishFlush: 2 })).toHaveLength(1_000_000)
    const gigabyte = Buffer.concat([Buffer.alloc(4), ...Array.from({ length: 1000 }, () => million)])
    const before = process.cpuUsage()
    expect(message(`#layout1.${gigabyte.subarray(0, 700_000).toString('base64url')}`)).toContain(
      'more than any layout',
    )
    expect(message(`#layout1.${gigabyte.toString('base64url')}`)).toContain('more than any layout')
    // A gigabyte takes seconds; two stops at the cap take hundredths of one.
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(1)
  })

  it('stops at its cap for words and spaces that would grow on the page', () => {
    const word = shortened('shoulder')
    expect(word).toHaveLength(1)
    expect(message(handMade(shortJson(`["${word.repeat(900)}"]`)))).toContain('carried')
    expect(message(handMade(shortJson(`["${word.repeat(900_000)}"]`)))).toContain('damaged')
    const nested = (depth: number): string =>
      `${'['.repeat(depth)}${'1,'.repeat(100_000)}1${']'.repeat(depth)}`
    expect(message(handMade(shortJson(nested(24))))).toContain('carried')
    expect(message(handMade(shortJson(nested(25))))).toContain('damaged')
    expect(message(handMade(shortJson(nested(5000))))).toContain('damaged')
  })

  it('refuses a sound stream with a wrong check sum, with bytes that are no text, and packed in an unknown way', () => {
    expect(message(handMade(asItIs('{}')))).toBe('carried {"kind":"layout","text":"{}"}')
    expect(message(handMade(asItIs('{}'), 7))).toContain('damaged')
    expect(message(handMade(Uint8Array.of(0, 0xc3, 0x28)))).toContain('damaged')
    expect(message(handMade(Uint8Array.of(2, 0x7b, 0x7d)))).toContain('damaged')
    expect(message(handMade(shortJson('{"a":')))).toContain('damaged')
  })

  it('hands on what is no layout as text, and reading it as a layout says what is wrong', () => {
    const hostile = [
      `{"version":1,"job":${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}}`,
      `${'['.repeat(200_000)}${']'.repeat(200_000)}`,
      JSON.stringify({ ...JSON.parse(text), datum: 'x'.repeat(900_000) }),
      text.replace('"version": 1,', '"version": 1, "__proto__": {"polluted": true},'),
      text.replace('"job": {', '"job": { "constructor": {"prototype": {"polluted": true}},'),
      text.replace('"version": 1', '"version": "1"'),
      'null',
      '"#layout1.x"',
    ]
    for (const sent of hostile) {
      const carried = carriedIn(fragmentOf({ kind: 'layout', text: sent }))
      expect(carried.ok && carried.value?.text === sent).toBe(true)
      const parsed = parseLayoutText(sent)
      expect(parsed.ok ? '' : parsed.error[0]?.message).toMatch(/\S/)
    }
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined()
  })
})
