import type { PointMm } from '../../../geometry/point'
import { anchorForm, type AnchorForm } from '../../../straps/anchor'
import { anchorOf } from '../../../straps/mount'
import type { PathContact, StrapPath } from '../../../straps/path'
import { type DrawnPlane, onPlane } from './drawnPlane'
import type { ExplainScene, NamedPoint } from './explanation'
import type { PointLabel } from './figure'
import { anchorContact } from './solvedStrap'

const formWords = (form: AnchorForm): string => {
  switch (form) {
    case 'wrap':
      return 'on the tube'
    case 'plate':
      return 'tab hole'
    case 'clevis':
      return 'clevis hole'
    case 'insert':
      return 'insert'
    case 'eye':
      return 'eye bolt'
  }
}

const mountWords = (scene: ExplainScene, path: StrapPath): string => {
  const mount = anchorOf(scene.place.anchors, path.strap)?.mount
  return mount === undefined ? 'anchor' : formWords(anchorForm(mount))
}

const contactWords = (scene: ExplainScene, path: StrapPath, { on }: PathContact): string => {
  switch (on) {
    case 'slot':
      return 'slot edge'
    case 'rim':
      return 'rim'
    case 'seat-side':
      return 'shell edge'
    case 'junction':
      return 'junction'
    case 'body':
      return 'body'
    case 'buckle':
      return 'buckle'
    case 'anchor':
      return mountWords(scene, path)
  }
}

/** The effective anchor by what it is: the hole, the eye, the wrapped tube, the edge of slot or shell, the rim, the junction. */
export const effectiveAnchorNamed = (scene: ExplainScene, path: StrapPath): NamedPoint => {
  const contact = path.contacts.find(({ point }) => point === path.effectiveAnchor)
  const words = contact === undefined ? mountWords(scene, path) : contactWords(scene, path, contact)
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

/** Letters for what a strap runs over between its effective anchor and its mount, from the body on. */
const BETWEEN_LETTERS = ['F', 'G', 'J'] as const

/** The contacts from the effective anchor back to the mount, each under a letter of its own: E … A; one alone is E. */
export const outsideNamed = (scene: ExplainScene, path: StrapPath): readonly NamedPoint[] => {
  const index = path.contacts.findIndex(({ point }) => point === path.effectiveAnchor)
  const outside = path.contacts.slice(0, Math.max(0, index) + 1).toReversed()
  return outside.map((contact, place) => {
    const isMount = place > 0 && place === outside.length - 1
    const letter = place === 0 ? 'E' : isMount ? 'A' : (BETWEEN_LETTERS[place - 1] ?? `E${place}`)
    return named(letter, contactWords(scene, path, contact), contact.point)
  })
}

/** The names as a plane shows them. */
export const labelled = (points: readonly NamedPoint[], plane: DrawnPlane): readonly PointLabel[] =>
  points.map(({ letter, words, point }) => ({ text: `${letter} ${words}`, at: onPlane(plane, point) }))
