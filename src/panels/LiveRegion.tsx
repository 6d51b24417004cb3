import { type ReactElement, useEffect, useState } from 'react'
import type { Layout } from '../domain/layout/document/layout'
import { handleById } from '../domain/layout/edit/handles'
import { spokenChanges, spokenPart, spokenPlace, spokenTight } from '../domain/layout/wording/spoken'
import type { ShownFinding } from '../domain/rules/finding'
import type { AppState } from '../state/appState'
import { useAppStore } from '../state/react'
import { currentPlace, currentPlaceEvaluation, waitingFor } from '../state/selectors'

/** So long nothing else may happen before what has happened is said: keys that follow each other are said once. Our judgement. */
const QUIET_MS = 350

/** What the listener has been told. */
interface Told {
  readonly announcement: string
  readonly layout: Layout
  readonly selectedId: string | null
  readonly documentId: string
  readonly placeId: string | undefined
  readonly findings: readonly ShownFinding[]
  /** As last known with their rooms, of the same place. */
  readonly known: readonly ShownFinding[] | null
}

const findingsOf = (state: AppState): readonly ShownFinding[] => currentPlaceEvaluation(state)?.findings ?? []

const areKnown = (state: AppState): boolean =>
  waitingFor(state) === null && findingsOf(state).every(({ roomMm }) => roomMm !== 'pending')

const toldOf = (state: AppState, known: Told['known']): Told => ({
  announcement: state.announcement,
  layout: state.layout,
  selectedId: state.selectedHandleId,
  documentId: state.documentId,
  placeId: currentPlace(state)?.id,
  findings: findingsOf(state),
  known: areKnown(state) ? findingsOf(state) : known,
})

const changeWords = (state: AppState, told: Told, isSamePlace: boolean): readonly string[] => {
  const handle = state.selectedHandleId === null ? null : handleById(state.layout, state.selectedHandleId)
  const findings = findingsOf(state)
  const broken = findings.filter(({ verdict }) => verdict === 'broken').length
  return [
    ...(state.announcement === '' ? [] : [`${state.announcement}.`]),
    ...(handle === null ? [] : [spokenPlace(handle, state.layout.units.length)]),
    ...(isSamePlace ? [spokenChanges(state.layout, told.findings, findings)] : []),
    `${broken} broken.`,
  ]
}

const selectionWords = (state: AppState): readonly string[] => {
  const handle = state.selectedHandleId === null ? null : handleById(state.layout, state.selectedHandleId)
  return [handle === null ? 'Nothing in hand.' : spokenPart(state.layout, handle, findingsOf(state))]
}

const isSameSeat = (state: AppState, told: Told): boolean =>
  told.documentId === state.documentId && told.placeId === currentPlace(state)?.id

/** What there is to say since the listener was last told; null when there is nothing. */
const newsOf = (state: AppState, told: Told): string | null => {
  const isSamePlace = isSameSeat(state, told)
  if (state.layout !== told.layout) return changeWords(state, told, isSamePlace).filter(Boolean).join(' ')
  if (state.announcement !== told.announcement) return `${state.announcement}.`
  if (state.selectedHandleId !== told.selectedId) return selectionWords(state).join(' ')
  if (!isSamePlace || told.known === null || !areKnown(state)) return null
  const tight = spokenTight(state.layout, told.known, findingsOf(state))
  return tight === '' ? null : tight
}

/**
 * Says every change and every part taken in hand aloud to those who do not see it, once it is done and quiet: a drag is not read out
 * pixel by pixel, and of keys in quick succession only what they came to.
 */
export const LiveRegion = (): ReactElement => {
  const store = useAppStore()
  const [words, setWords] = useState('')
  useEffect(() => {
    let told = toldOf(store.state.getState(), null)
    let timer: ReturnType<typeof setTimeout> | undefined
    const tell = (): void => {
      timer = undefined
      const state = store.state.getState()
      // Told when it is over.
      if (state.gesture !== null) return
      const news = newsOf(state, told)
      const isSamePlace = isSameSeat(state, told)
      told = toldOf(state, isSamePlace ? told.known : null)
      if (news !== null) setWords(news)
    }
    // What is only worked out beside the page does not put off what was done.
    const stop = store.state.subscribe((state, before) => {
      const hasHappened =
        state.layout !== before.layout ||
        state.announcement !== before.announcement ||
        state.selectedHandleId !== before.selectedHandleId ||
        state.gesture !== before.gesture
      if (hasHappened) clearTimeout(timer)
      if (hasHappened || timer === undefined) timer = setTimeout(tell, QUIET_MS)
    })
    return () => {
      clearTimeout(timer)
      stop()
    }
  }, [store])
  return (
    <p className="visually-hidden" aria-live="polite" data-testid="announcement">
      {words}
    </p>
  )
}
