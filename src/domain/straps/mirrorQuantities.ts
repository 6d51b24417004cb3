import { anchorOf } from './mount'
import type { QuantitySink } from './quantity'
import type { StrapScene } from './scene'
import type { StrapFamily } from './strap'

/** Whether the belt has two straps of a family. */
const hasPair = ({ belt: { arrangement } }: StrapScene, family: StrapFamily): boolean => {
  switch (family) {
    case 'shoulder':
      return arrangement !== 3
    case 'lap':
      return true
    case 'sub':
      return arrangement >= 6
  }
}

/**
 * Adds how far the left and right mounts of a pair differ fore and aft and in height together, mm ≥ 0, whether or not the straps have a
 * path. Formula: hypot(Δx, Δz) of the holes, eyes or tube centres; source: Pythagoras.
 */
export const addMirror = (sink: QuantitySink, scene: StrapScene, family: StrapFamily): void => {
  if (!sink.wants(`${family}-mirror`) || !hasPair(scene, family)) return
  const left = anchorOf(scene.anchors, `${family}-left`)?.mount.point
  const right = anchorOf(scene.anchors, `${family}-right`)?.mount.point
  if (left === undefined || right === undefined) return
  sink.put(`${family}-mirror`, `${family}-pair`, Math.hypot(right.xMm - left.xMm, right.zMm - left.zMm))
}
