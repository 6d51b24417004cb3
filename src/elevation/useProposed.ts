import { useMemo, useSyncExternalStore } from 'react'
import type { ProposedMarks } from '../domain/layout/drawing/proposedPrimitives'
import { pageProposeRunner } from '../state/propose/pageProposeRunner'
import { areStillGood } from '../state/propose/staleProposals'
import { useApp } from '../state/react'
import { currentPlace } from '../state/selectors'

const NONE: readonly ProposedMarks[] = []

/** The proposals to mark on the drawing: those of the current place while their panel is in view and they still hold. */
export const useProposed = (): readonly ProposedMarks[] => {
  const { last, shownId, isInView } = useSyncExternalStore(
    pageProposeRunner.subscribe,
    pageProposeRunner.state,
  )
  const layout = useApp((state) => state.layout)
  const place = useApp(currentPlace)
  return useMemo(() => {
    if (!isInView || last === null || place === undefined || last.result.placeId !== place.id) return NONE
    if (!areStillGood(last.question.layout, layout, last.result)) return NONE
    return last.result.proposals.map((proposal, index) => ({
      name: `Position ${index + 1}`,
      isShown: proposal.id === shownId,
      anchors: proposal.mounts.flatMap(({ anchorId, mount }) => {
        const from = place.anchors.find(({ id }) => id === anchorId)?.mount.point
        return from === undefined ? [] : [{ anchorId, from, to: mount.point }]
      }),
    }))
  }, [last, shownId, isInView, layout, place])
}
