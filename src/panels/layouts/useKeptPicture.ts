import { type RefObject, useEffect, useMemo, useRef, useState } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import { layoutNumbers } from '../../domain/layout/evaluate/evaluateLayout'

/**
 * A kept layout once it has been looked at: read whole, with how many of its findings are broken, null where they could not be counted;
 * `damaged` when it cannot be read.
 */
type KeptPicture =
  { readonly layout: Layout; readonly brokenCount: number | null } | 'damaged' | 'not-looked-at'

const brokenCountOf = (layout: Layout): number | null => {
  try {
    const findings = layoutNumbers(layout).places.flatMap((place) => place.findings)
    return findings.filter(({ verdict }) => verdict === 'broken').length
  } catch {
    // One layout that cannot be worked out must not take the list along.
    return null
  }
}

const pictureOf = (text: string): KeptPicture => {
  const parsed = parseLayoutText(text)
  if (!parsed.ok) return 'damaged'
  return { layout: parsed.value, brokenCount: brokenCountOf(parsed.value) }
}

/** Reads and evaluates a kept layout when its card comes into view for the first time, so that a long list opens at once. */
export const useKeptPicture = (
  text: string,
): { readonly card: RefObject<HTMLLIElement | null>; readonly picture: KeptPicture } => {
  const card = useRef<HTMLLIElement>(null)
  const [isSeen, setSeen] = useState(false)
  useEffect(() => {
    if (isSeen || card.current === null) return
    const observer = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true)
    })
    observer.observe(card.current)
    return () => observer.disconnect()
  }, [isSeen])
  const picture = useMemo(() => (isSeen ? pictureOf(text) : 'not-looked-at'), [isSeen, text])
  return { card, picture }
}
