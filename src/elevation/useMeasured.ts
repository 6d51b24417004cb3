import { useMemo } from 'react'
import { recordDeviations } from '../domain/layout/asWelded/deviation'
import type { MeasuredMark } from '../domain/layout/drawing/measuredPrimitives'
import { judgedLength } from '../domain/layout/wording/weldedWords'
import { useApp, useKept } from '../state/react'
import { currentPlace } from '../state/selectors'
import { pageWelded } from '../state/welded/pageWelded'
import { measuredOf, shownRecord } from '../state/welded/weldedCheck'

const NONE: readonly MeasuredMark[] = []

/** What was measured on the car, to mark on the drawing: of the current place, while records are in view. */
export const useMeasured = (): readonly MeasuredMark[] => {
  const { recordId, anchorId, isInView } = useKept(pageWelded.view)
  const layout = useApp((state) => state.layout)
  const isMoving = useApp((state) => state.gesture !== null)
  const placeId = useApp((state) => currentPlace(state)?.id)
  return useMemo(() => {
    const record = shownRecord(layout, recordId)
    if (!isInView || isMoving || record === null) return NONE
    const deviations = recordDeviations(layout, record)
    return measuredOf(layout, record).anchors.flatMap(
      ({ placeId: place, anchor, standing, mount, reading }) => {
        const own = deviations.find((deviation) => deviation.reading.entry === reading?.entry)
        if (place !== placeId || standing !== 'measured' || own?.position == null) return []
        return [
          {
            placeId: place,
            anchorId: anchor.id,
            from: anchor.mount.point,
            to: mount.point,
            text: judgedLength(own.position.totalMm, layout.units.length),
            isOutside: own.verdict === 'outside',
            isPicked: anchor.id === anchorId,
          },
        ]
      },
    )
  }, [layout, recordId, anchorId, isInView, isMoving, placeId])
}
