const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Same content, whatever the identity: plain objects, arrays and primitives; the order of keys does not count. */
export const isSameValue = (a: unknown, b: unknown): boolean => {
  if (Object.is(a, b)) return true
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((item, index) => isSameValue(item, b[index]))
  if (!isRecord(a) || !isRecord(b)) return false
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSameValue(a[key], b[key]))
  )
}
