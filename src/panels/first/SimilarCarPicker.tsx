import { type ReactElement, useEffect, useState } from 'react'
import { emptyLayout } from '../../domain/layout/document/empty'
import type { Layout } from '../../domain/layout/document/layout'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import { startFromPattern } from '../../state/firstLayout/guideKeeper'
import { pageKeeping } from '../../state/keeping/pageKeeping'
import { useAppStore } from '../../state/react'
import { isSameValue } from '../../state/sameValue'
import { LayoutPicture } from '../figure/LayoutPicture'

interface Pattern {
  readonly id: string
  readonly name: string
  readonly layout: Layout
}

type Patterns = readonly Pattern[] | 'loading' | 'failed'

/** A handful to choose from here; the rest are under Layouts. Our judgement. */
const AT_MOST = 12

/** Kept layouts that have something on them, the newest first. */
const keptPatterns = async (): Promise<readonly Pattern[] | null> => {
  const kept = await pageKeeping.list()
  return (
    kept
      ?.filter(({ removedAtMs }) => removedAtMs === null)
      .flatMap(({ id, text, jobName }): readonly Pattern[] => {
        const parsed = parseLayoutText(text)
        if (!parsed.ok || isSameValue(parsed.value, emptyLayout())) return []
        const { car } = parsed.value.job
        const name = [jobName, car].filter((words) => words !== '').join(', ')
        return [{ id, name: name === '' ? 'Unnamed layout' : name, layout: parsed.value }]
      })
      .slice(0, AT_MOST) ?? null
  )
}

/** Own layouts to start a similar car from: the car stays, what belongs to that job does not come along. */
export const SimilarCarPicker = (props: { readonly onDone?: () => void }): ReactElement => {
  const store = useAppStore()
  const [patterns, setPatterns] = useState<Patterns>('loading')
  useEffect(() => {
    let isWanted = true
    void keptPatterns().then((list) => {
      if (isWanted) setPatterns(list ?? 'failed')
    })
    return () => {
      isWanted = false
    }
  }, [])
  if (patterns === 'loading') return <p className="hint">Looking for the layouts kept on this device…</p>
  if (patterns === 'failed')
    return (
      <p className="hint">
        This browser does not say which layouts it keeps. Open the similar car from its file, then answer the
        questions on it.
      </p>
    )
  if (patterns.length === 0)
    return (
      <p className="hint">
        No layout with anything on it is kept on this device yet. Answer the questions first.
      </p>
    )
  return (
    <>
      <p className="hint">
        Car, seat, belts, anchors and rules come along as starting values. Names, dates, measured people,
        welded records and belts do not.
      </p>
      <ul className="pattern-list">
        {patterns.map(({ id, name, layout }) => (
          <li key={id}>
            <button
              type="button"
              onClick={() => {
                startFromPattern(store, layout)
                props.onDone?.()
              }}
            >
              <LayoutPicture layout={layout} elevation="side" description="" />
              <span>{name}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}
