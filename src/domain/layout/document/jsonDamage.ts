/*
 * Where a text stops being JSON. Engines find it too, but word it differently and often leave the place out.
 * Source of the grammar: RFC 8259 (from memory).
 */

/** What may come next: a value, a key, what follows a value, or nothing. `first` also allows the group or list to end at once. */
type Expected = 'value' | 'first-value' | 'key' | 'first-key' | 'colon' | 'next' | 'nothing'

const BLANK = /[ \t\n\r]*/y
// Control characters must be escaped in JSON strings, so they end the match here.
// oxlint-disable-next-line no-control-regex
const TEXT = /"[^"\\\u0000-\u001F]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\u0000-\u001F]*)*"/y
const PLAIN = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/y

/** The offset after what the pattern matches at `at`, or null. */
const after = (pattern: RegExp, text: string, at: number): number | null => {
  pattern.lastIndex = at
  return pattern.test(text) ? pattern.lastIndex : null
}

interface Step {
  readonly at: number
  readonly expected: Expected
}

/** One token further, or null when the token does not belong there. `open` holds the closing bracket of each open one. */
const step = (text: string, at: number, expected: Expected, open: string[]): Step | null => {
  const char = text[at]
  const closed = (): Step => {
    open.pop()
    return { at: at + 1, expected: open.length === 0 ? 'nothing' : 'next' }
  }
  switch (expected) {
    case 'nothing':
      return null
    case 'colon':
      return char === ':' ? { at: at + 1, expected: 'value' } : null
    case 'next':
      if (char === open.at(-1)) return closed()
      return char === ',' ? { at: at + 1, expected: open.at(-1) === '}' ? 'key' : 'value' } : null
    case 'key':
    case 'first-key': {
      if (expected === 'first-key' && char === '}') return closed()
      const end = after(TEXT, text, at)
      return end === null ? null : { at: end, expected: 'colon' }
    }
    case 'value':
    case 'first-value': {
      if (expected === 'first-value' && char === ']') return closed()
      if (char === '{' || char === '[') {
        open.push(char === '{' ? '}' : ']')
        return { at: at + 1, expected: char === '{' ? 'first-key' : 'first-value' }
      }
      const end = after(char === '"' ? TEXT : PLAIN, text, at)
      return end === null ? null : { at: end, expected: open.length === 0 ? 'nothing' : 'next' }
    }
  }
}

/** The offset of the first token that does not belong where it is, the length of a text that breaks off, null for JSON. */
export const jsonDamageOffset = (text: string): number | null => {
  const open: string[] = []
  let at = 0
  let expected: Expected = 'value'
  for (;;) {
    at = after(BLANK, text, at) ?? at
    if (at >= text.length) return expected === 'nothing' ? null : text.length
    const next = step(text, at, expected, open)
    if (next === null) return at
    ;({ at, expected } = next)
  }
}
