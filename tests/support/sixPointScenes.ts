import type { Layout } from '../../src/domain/layout/document/layout'
import type { Evaluation } from '../../src/domain/layout/evaluate/evaluation'
import type { StrapScene } from '../../src/domain/straps/scene'

/** The scenes of the first place, one for each sitting, as the strap code gets them. */
export const sixPointScenes = (layout: Layout, evaluation: Evaluation): readonly StrapScene[] => {
  const place = layout.places[0]
  const evaluated = evaluation.places[0]
  if (place === undefined || evaluated === undefined) throw new Error('the layout has no place')
  const { seat, belt, anchors } = place
  return evaluated.sittings.map(({ pose, body }) => ({
    seat,
    pose,
    body,
    belt,
    anchors,
    tubes: layout.tubes,
  }))
}
