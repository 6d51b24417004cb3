import type { PlanePointMm } from '../../../domain/geometry/plane'
import type { PagePoint } from '../../page/item'

/** Where one elevation lies on the page and how much it is reduced. Drawing up is page up; page y runs down. */
export interface FigureView {
  /** n of 1:n. */
  readonly scale: number
  /** Where the datum is on the page. */
  readonly datum: PagePoint
}

export const pagePoint = (view: FigureView, point: PlanePointMm): PagePoint => ({
  xMm: view.datum.xMm + point.uMm / view.scale,
  yMm: view.datum.yMm - point.vMm / view.scale,
})
