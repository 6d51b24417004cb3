import { useMemo } from 'react'
import type { ProposedMarks } from '../domain/layout/drawing/proposedPrimitives'
import { pageSearch } from '../state/propose/pageSearch'
import { areStillGood } from '../state/propose/staleProposals'
import { useApp, useKept } from '../state/react'
import { currentPlace } from '../state/selectors'

const NONE: readonly ProposedMarks[] = []

/** The proposals to mark on the drawing: those of the current place while their panel is in view and they still hold. */
export const useProposed = (): readonly ProposedMarks[] => {
  const { last } = useKept(pageSearch.state)
  const { shownId, isInView } = useKept(pageSearch.view)
  const layout = useApp((state) => state.layout)
  const place = useApp(currentPlace)
  return useMemo(() => {
    if (!isInView || last === null || place === undefined || last.value.placeId !== place.id) return NONE
    if (!areStillGood(last.question.layout, layout, last.value)) return NONE
    return last.value.proposals.map((proposal, index) => ({
      name: `Position ${index + 1}`,
      isShown: proposal.id === shownId,
      anchors: proposal.mounts.flatMap(({ anchorId, mount }) => {
        const from = place.anchors.find(({ id }) => id === anchorId)?.mount.point
        return from === undefined ? [] : [{ anchorId, from, to: mount.point }]
      }),
    }))
  }, [last, shownId, isInView, layout, place])
}
