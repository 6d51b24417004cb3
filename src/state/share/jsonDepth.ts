/** How many groups of a JSON text lie within each other at most, 0 where there are none; brackets in quoted words do not count. */
export const jsonDepth = (text: string): number => {
  let depth = 0
  let deepest = 0
  let isQuoted = false
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at]
    if (isQuoted && character === '\\') at += 1
    else if (character === '"') isQuoted = !isQuoted
    else if (isQuoted) continue
    else if (character === '{' || character === '[') deepest = Math.max(deepest, (depth += 1))
    else if (character === '}' || character === ']') depth -= 1
  }
  return deepest
}
