import { useLayoutEffect, useMemo, useRef, type ReactElement, type ReactNode } from 'react'
import { verdictWord } from '../domain/layout/wording/words'
import { sittingName } from '../domain/layout/wording/names'
import type { ShownFinding, ShownVerdict } from '../domain/rules/finding'
import { useActions, useApp } from '../state/react'
import {
  currentEvaluation,
  currentPlace,
  currentPlaceEvaluation,
  currentSitting,
  waitingFor,
  zonesFailureOf,
} from '../state/selectors'
import { VariantSelect } from './compare/VariantSelect'
import { ChoiceField } from './fields/ChoiceField'
import { PhotoToggle } from './photo/PhotoToggle'
import { useIsLong } from './useIsLong'
import { VERDICT_ORDER } from './verdicts'
import { useSettledZonesFailure } from './ZoneStatus'

const countOf = (findings: readonly ShownFinding[], verdict: ShownVerdict): number =>
  findings.filter((finding) => finding.verdict === verdict).length

/**
 * How many findings of each verdict the current place has; verdicts with none are left out, broken is always said. What is kept is
 * neither called tight nor clear before its room is known, and a drawing that lacks zones is not silent about them for long.
 */
const FindingCounts = (): ReactElement => {
  const findings = useApp((state) => currentPlaceEvaluation(state)?.findings)
  const waiting = useApp(waitingFor)
  const hasFailed = useApp((state) => zonesFailureOf(state) !== null)
  const isSaidBelow = useSettledZonesFailure() !== null
  const areZonesLate = useIsLong(waiting === 'zones')
  return (
    <ul className="counts" data-testid="finding-counts" data-waiting={waiting ?? undefined}>
      {VERDICT_ORDER.map((verdict) => ({ verdict, count: countOf(findings ?? [], verdict) }))
        .filter(({ verdict, count }) => count > 0 || verdict === 'broken')
        .map(({ verdict, count }) => (
          <li key={verdict} data-verdict={verdict}>
            {count} {verdictWord(verdict)}
          </li>
        ))}
      {hasFailed && !isSaidBelow ? (
        <li>zones not known</li>
      ) : areZonesLate ? (
        <li>zones being worked out…</li>
      ) : null}
    </ul>
  )
}

const PlaceButtons = (): ReactElement => {
  const places = useApp((state) => state.layout.places)
  const evaluation = useApp(currentEvaluation)
  const currentId = useApp((state) => currentPlace(state)?.id)
  const { selectPlace } = useActions()
  return (
    <div className="places" role="group" aria-label="Places">
      {places.map((place) => {
        const findings = evaluation.places.find((entry) => entry.placeId === place.id)?.findings ?? []
        const broken = countOf(findings, 'broken')
        return (
          <button
            key={place.id}
            type="button"
            aria-pressed={place.id === currentId}
            onClick={() => selectPlace(place.id)}
          >
            {place.name === '' ? 'Unnamed place' : place.name}
            {broken > 0 && place.id !== currentId ? (
              <span className="tab-mark" data-tone="broken">
                {' '}
                {broken} {verdictWord('broken')}
              </span>
            ) : null}
          </button>
        )
      })}
    </div>
  )
}

const SittingSelect = (): ReactElement | null => {
  const sittings = useApp((state) => currentPlaceEvaluation(state)?.sittings)
  const shown = useApp((state) => currentSitting(state)?.sitting.id)
  const layout = useApp((state) => state.layout)
  const { selectSitting } = useActions()
  const choices = useMemo(
    () => (sittings ?? []).map(({ sitting }) => ({ value: sitting.id, words: sittingName(sitting, layout) })),
    [sittings, layout],
  )
  if (shown === undefined) return null
  return (
    <ChoiceField label="Sitting" value={shown} choices={choices} testId="sitting" onChange={selectSitting} />
  )
}

/**
 * While something is moved the bar keeps its height, whatever it has to say: another line in it would make the drawing below another
 * size under the hand.
 */
const useHeightWhileMoving = () => {
  const bar = useRef<HTMLDivElement>(null)
  const isMoving = useApp((state) => state.gesture !== null)
  useLayoutEffect(() => {
    const element = bar.current
    if (element === null || !isMoving) return undefined
    element.style.height = `${element.offsetHeight}px`
    element.style.overflow = 'hidden'
    return () => {
      element.style.height = ''
      element.style.overflow = ''
    }
  }, [isMoving])
  return bar
}

/** Whose seat is looked at, in which position, and how it stands. */
export const PlaceBar = (props: { readonly panelToggle: ReactNode }): ReactElement => (
  <div className="place-bar" ref={useHeightWhileMoving()}>
    <VariantSelect />
    <PlaceButtons />
    <FindingCounts />
    <SittingSelect />
    <PhotoToggle />
    {props.panelToggle}
  </div>
)
