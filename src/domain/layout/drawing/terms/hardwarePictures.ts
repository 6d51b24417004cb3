import type { FIXING_TERMS } from '../../wording/termsFixing'
import type { Mount } from '../../../straps/anchor'
import { carPicture, detailPicture, SCENE } from './carPictures'
import { arrow, type Picture, pictureOf, stroke, window43, words } from './picture'
import { coped, hoops, insertSection, shearSection, shoulderBolt, slide, standoffPicture } from './sections'

const asClevis = (mount: Mount): Mount => (mount.kind === 'tab' ? { ...mount, form: 'clevis' } : mount)

const asEye = (mount: Mount): Mount => ({
  kind: 'eye',
  point: mount.point,
  planDeg: 145,
  riseDeg: 72,
  threadDiameterMm: 11.1,
  eyeDiameterMm: 25,
  tubeId: mount.kind === 'wrap' ? null : mount.tubeId,
})

const tapes = (): Picture =>
  carPicture(
    SCENE,
    {
      elevation: 'side',
      parts: ['anchor/lap-left', 'datum'],
      extra: [
        stroke(
          'tape/1',
          [
            [0, 0],
            [1040, 88],
          ],
          'dimension',
        ),
        stroke(
          'tape/2',
          [
            [1400, 40],
            [1040, 88],
          ],
          'dimension',
        ),
        stroke(
          'tape/3',
          [
            [1400, 1180],
            [1040, 88],
          ],
          'dimension',
        ),
        words('words', [1020, 150], 'lap tab', 'right'),
        words('1', [420, 70], 'tape 1', 'centre', 'plain'),
        words('2', [1240, 100], 'tape 2', 'centre', 'plain'),
        words('3', [1240, 560], 'tape 3', 'right', 'plain'),
      ],
    },
    'Three tapes from the datum and two corners of the car to the hole of the left lap tab.',
  )

/** Pictures of what straps are fixed by. */
export const FIXING_PICTURES: Readonly<Record<keyof typeof FIXING_TERMS, () => Picture>> = {
  anchor: () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['anchor/'],
        extra: [
          words('lap', [1070, 30], 'lap tab', 'left'),
          words('sub', [850, -20], 'thigh tab', 'centre'),
          words('bar', [1380, 540], 'wrap', 'right'),
        ],
      },
      'Side elevation with the anchors picked out: wraps on the harness bar, tabs beside the seat and under the thighs.',
    ),
  tab: () =>
    detailPicture(
      'lap-left',
      'A tab on its tube, seen along the tube, with the strap pulling from its hole.',
    ),
  clevis: () =>
    detailPicture(
      'sub-left',
      'A clevis: two plates on a tube with the strap’s fitting between them.',
      asClevis,
    ),
  insert: insertSection,
  'eye-bolt': () =>
    detailPicture('lap-left', 'An eye bolt screwed in at a tube, its shank along the strap.', asEye),
  wrap: () => detailPicture('shoulder-left', 'A strap wrapped round the harness bar, seen along the bar.'),
  'three-bar-slide': slide,
  'guide-hoop': hoops,
  'single-shear': () =>
    pictureOf(
      [...shearSection([[6, 5]], [-6, 12]), words('plane', [10, 30], 'cut across once', 'left')],
      'A bolt through a fitting and one plate: the strap pulls the fitting up on one side of the plate only.',
    ),
  'double-shear': () =>
    pictureOf(
      [
        ...shearSection(
          [
            [-6, 5],
            [6, 5],
          ],
          [-12, 12],
        ),
        words('plane', [12, 30], 'held on both sides', 'left'),
      ],
      'A bolt through two plates with the fitting between them: the strap pulls up in the middle.',
    ),
  'shoulder-bolt': shoulderBolt,
  'line-of-pull': () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['anchor/lap-left', 'strap/lap-left'],
        bounds: window43(960, 190, 420),
        extra: [
          ...arrow('pull', [1040, 88], 128.8, 150),
          words('words', [1040, 200], 'line of pull', 'left'),
        ],
      },
      'The left lap tab with an arrow along the strap that pulls on it.',
    ),
  standoff: standoffPicture,
  coping: coped,
  'tape-check': tapes,
}
