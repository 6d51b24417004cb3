import { err, ok, type Result } from '../../result'

export interface LensInside {
  readonly kind: 'lens-inside'
  readonly cameraDistanceMm: number
  readonly nearerMm: number
}

/**
 * How far from its true place a part is seen that does not lie in the calibrated plane, mm: outward from the spot straight across from the
 * lens (+) when it is nearer to the camera, inward (−) when it is farther.
 *
 * `cameraDistanceMm` D > 0: the lens from the calibrated plane, square to it. `nearerMm` d: the part nearer to the camera than the plane (+),
 * farther (−). `fromMiddleMm` r ≥ 0: the part from the spot straight across from the lens, along the plane. Displacement r·d / (D − d).
 * Source: derived here. The ray from the lens through the part goes on to the plane; by similar triangles it meets it at r·D / (D − d) from the
 * spot, and r of that is true. Fails when the part is not in front of the lens (d ≥ D).
 */
export const parallaxMm = (view: {
  readonly cameraDistanceMm: number
  readonly nearerMm: number
  readonly fromMiddleMm: number
}): Result<number, LensInside> => {
  const { cameraDistanceMm, nearerMm, fromMiddleMm } = view
  if (!(cameraDistanceMm > 0) || !(nearerMm < cameraDistanceMm))
    return err({ kind: 'lens-inside', cameraDistanceMm, nearerMm })
  return ok((fromMiddleMm * nearerMm) / (cameraDistanceMm - nearerMm))
}
