import type { Primitive } from '../primitive'
import { arrow, measured, type Picture, pictureOf, rectangle, ring, stroke, words } from './picture'

/* Schematic sections in mm at about true size. They show how a thing works and are no dimensions to build to. */

/** Fitting, plates and bolt cut through along the bolt; the fitting pulls up. */
export const shearSection = (
  plates: readonly (readonly [middle: number, width: number])[],
  shank: readonly [number, number],
): readonly Primitive[] => [
  ...plates.map(([middle, width], index) => rectangle(`plate/${index}`, [middle, -14], [width, 44])),
  rectangle('fitting', [0, 12], [5, 46], 'strap'),
  rectangle('bolt', [(shank[0] + shank[1]) / 2, 0], [shank[1] - shank[0], 11], 'focus'),
  rectangle('bolt-head', [shank[0] - 4, 0], [8, 18], 'focus'),
  rectangle('nut', [shank[1] + 4, 0], [8, 18], 'focus'),
  ...arrow('pull', [0, 40], 90, 18),
  words('pull-words', [4, 50], 'strap', 'left', 'plain'),
]

export const slide = (): Picture =>
  pictureOf(
    [
      ...[-18, 0, 18].map((u, index) => rectangle(`bar/${index}`, [u, 0], [6, 8])),
      stroke(
        'frame',
        [
          [-26, -9],
          [26, -9],
          [26, 9],
          [-26, 9],
        ],
        'hidden',
        'closed',
      ),
      stroke(
        'in',
        [
          [-70, 9],
          [-24, 9],
          [-9, -7],
          [9, 7],
          [24, -8],
          [40, -8],
        ],
        'strap',
      ),
      ring('tube', [58, 0], 19, 'tube'),
      stroke(
        'round',
        [
          [40, -8],
          [48, -19],
          [60, -22],
          [74, -15],
          [80, 0],
          [74, 15],
          [60, 22],
          [46, 17],
          [24, 14],
          [9, 10],
          [-9, -10],
          [-24, 12],
          [-52, 13],
        ],
        'focus',
      ),
      words('end', [-54, 19], 'woven back', 'centre', 'plain'),
      words('strap', [-60, 2], 'to the shoulder', 'centre', 'plain'),
      words('bar-words', [58, 0], 'bar', 'centre', 'plain'),
    ],
    'A three-bar slide from the side: the strap goes under the middle bar, round the tube and back through all three bars.',
  )

export const hoops = (): Picture =>
  pictureOf(
    [
      rectangle('bar', [0, 0], [260, 38], 'tube'),
      rectangle('webbing', [0, 6], [76, 52], 'strap'),
      stroke(
        'strap/left',
        [
          [-38, 32],
          [-38, 95],
        ],
        'strap',
      ),
      stroke(
        'strap/right',
        [
          [38, 32],
          [38, 95],
        ],
        'strap',
      ),
      ...[-46, 46].map((u) =>
        stroke(
          `hoop/${u}`,
          [
            [u - 4, -19],
            [u - 4, 30],
            [u, 34],
            [u + 4, 30],
            [u + 4, -19],
          ],
          'focus',
        ),
      ),
      words('hoops', [62, 44], 'guide hoops', 'left'),
      words('bar-words', [-110, -32], 'harness bar', 'left', 'plain'),
    ],
    'The harness bar from above with a strap wrapped round it and a small welded hoop on each side of the strap.',
  )

export const shoulderBolt = (): Picture =>
  pictureOf(
    [
      rectangle('head', [-19, 0], [10, 22]),
      rectangle('shoulder', [-2, 0], [24, 13], 'focus'),
      rectangle('thread', [19, 0], [18, 9.5], 'hidden'),
      rectangle('plate', [15, -12], [5, 44]),
      rectangle('fitting', [-2, 14], [5, 40], 'strap'),
      measured('length', [-14, -7], [10, -7], 'smooth, longer than the fitting', -16),
      words('thread-words', [30, 0], 'thread', 'left', 'plain'),
      ...arrow('pull', [-2, 36], 90, 12),
    ],
    'A shoulder bolt: a smooth thick shank in the strap’s fitting, a thinner thread screwed into the plate.',
  )

export const coped = (): Picture =>
  pictureOf(
    [
      ring('tube', [0, 0], 19, 'tube'),
      stroke(
        'plate',
        [
          [-17, 8.5],
          [-12, 14.8],
          [-6, 18],
          [0, 19],
          [6, 18],
          [12, 14.8],
          [17, 8.5],
          [20, 20],
          [20, 40],
          [14, 54],
          [0, 60],
          [-14, 54],
          [-20, 40],
          [-20, 20],
        ],
        'outline',
        'closed',
      ),
      stroke(
        'cope',
        [
          [-17, 8.5],
          [-12, 14.8],
          [-6, 18],
          [0, 19],
          [6, 18],
          [12, 14.8],
          [17, 8.5],
        ],
        'focus',
      ),
      ring('hole', [0, 40], 5.75),
      words('cope-words', [24, 10], 'coped edge', 'left'),
      words('tube-words', [0, -4], 'tube', 'centre', 'plain'),
    ],
    'A tab on a tube seen along the tube: its lower edge is hollowed so that it lies on the tube without a gap.',
  )

export const standoffPicture = (): Picture =>
  pictureOf(
    [
      ring('tube', [0, 0], 19, 'tube'),
      stroke('plate', [
        [-20, 8],
        [-20, 40],
        [-14, 54],
        [0, 60],
        [14, 54],
        [20, 40],
        [20, 8],
      ]),
      ring('hole', [0, 40], 5.75),
      measured('standoff', [0, 19], [0, 40], 'standoff', 30),
    ],
    'The standoff: from the surface of the tube up to the middle of the tab’s hole.',
  )

export const insertSection = (): Picture =>
  pictureOf(
    [
      ring('tube', [0, 0], 22, 'tube'),
      ring('bore', [0, 0], 19.6, 'tube'),
      rectangle('bush', [0, 14], [22, 30], 'focus'),
      rectangle('thread', [0, 14], [11, 30], 'hidden'),
      rectangle('fitting', [12, 33], [50, 5], 'strap'),
      rectangle('head', [0, 41], [20, 9]),
      ...arrow('pull', [38, 33], 0, 22),
      words('bush-words', [-16, 16], 'insert', 'right'),
      words('tube-words', [0, -10], 'tube', 'centre', 'plain'),
      words('bolt-words', [-14, 42], 'bolt', 'right', 'plain'),
    ],
    'A threaded bush welded through the wall of a tube; a bolt holds the strap’s fitting on it.',
  )
