import type { PointMm } from '../../../geometry/point'
import { anchorOf } from '../../../straps/mount'
import type { StrapPath } from '../../../straps/path'
import { type DrawnPlane, onPlane } from './drawnPlane'
import type { ExplainScene, NamedPoint } from './explanation'
import type { PointLabel } from './figure'
import { anchorContact } from './solvedStrap'

const mountWords = (scene: ExplainScene, path: StrapPath): string =>
  anchorOf(scene.place.anchors, path.strap)?.mount.kind === 'wrap' ? 'on the tube' : 'tab hole'

/** The effective anchor by what it is: the tab's hole, the wrapped tube, the slot's edge or the rim. */
export const effectiveAnchorNamed = (scene: ExplainScene, path: StrapPath): NamedPoint => {
  const contact = path.contacts.find(({ point }) => point === path.effectiveAnchor)
  const words = contact?.on === 'slot' ? 'slot edge' : contact?.on === 'rim' ? 'rim' : mountWords(scene, path)
  return { letter: 'E', words, point: path.effectiveAnchor }
}

export const anchorNamed = (scene: ExplainScene, path: StrapPath): NamedPoint => ({
  letter: 'A',
  words: mountWords(scene, path),
  point: anchorContact(path),
})

export const bodyNamed = (path: StrapPath, words: string): NamedPoint => ({
  letter: 'T',
  words,
  point: path.bodyContact,
})

export const named = (letter: string, words: string, point: PointMm): NamedPoint => ({ letter, words, point })

/** The names as a plane shows them. */
export const labelled = (points: readonly NamedPoint[], plane: DrawnPlane): readonly PointLabel[] =>
  points.map(({ letter, words, point }) => ({ text: `${letter} ${words}`, at: onPlane(plane, point) }))
