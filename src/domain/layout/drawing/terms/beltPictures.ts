import type { BELT_TERMS } from '../../wording/termsBelt'
import { cosDeg, sinDeg } from '../../../units/angle'
import type { Primitive } from '../primitive'
import { carPicture, numberPicture, SCENE } from './carPictures'
import { arrow, type Picture, pictureOf, rectangle, ring, stroke, words } from './picture'

/** A buckle from the front with straps to it, by the directions they come from. */
const strapsTo = (directionsDeg: readonly number[]): readonly Primitive[] =>
  directionsDeg.flatMap((deg, index) => {
    const [u, v] = [90 * cosDeg(deg), 90 * sinDeg(deg)]
    return [
      stroke(
        `strap/${index}`,
        [
          [u / 4, v / 4],
          [u, v],
        ],
        'strap',
      ),
    ]
  })

/** Shoulders, laps and thighs, anticlockwise from the occupant's left as seen from ahead. */
const SIX = [62, 118, 190, 250, 290, 350] as const

const arrangement = (): Picture =>
  pictureOf(
    [
      { points: [62, 118, 190, 350], text: '4', u: -360 },
      { points: [62, 118, 190, 270, 350], text: '5', u: -120 },
      { points: [...SIX], text: '6', u: 120 },
      { points: [...SIX, 270], text: '7', u: 360 },
    ].flatMap(({ points, text, u }) => [
      ring(`buckle/${text}`, [u, 0], 22, 'focus'),
      ...points.map((deg) => {
        const [across, up] = [cosDeg(deg), sinDeg(deg)]
        return stroke(
          `strap/${text}/${deg}`,
          [
            [u + 22 * across, 22 * up],
            [u + 95 * across, 95 * up],
          ],
          'strap',
        )
      }),
      words(`count/${text}`, [u, -140], text),
    ]),
    'Four buckles from the front with four, five, six and seven straps.',
  )

const latch = (): Picture =>
  pictureOf(
    [
      ...strapsTo(SIX),
      rectangle('plate', [0, 0], [44, 30], 'focus'),
      stroke(
        'lever',
        [
          [-16, 10],
          [24, 10],
          [34, 4],
          [24, -2],
          [-16, -2],
        ],
        'focus',
        'closed',
      ),
      ring('pivot', [-12, 4], 3, 'focus'),
      words('lever-words', [40, 14], 'lever', 'left'),
    ],
    'A latch-and-link buckle from the front: a lever closed over the links of six straps.',
  )

const rotary = (): Picture =>
  pictureOf(
    [
      ...strapsTo(SIX),
      ring('housing', [0, 0], 24, 'focus'),
      rectangle('handle', [0, 0], [34, 9], 'focus'),
      stroke(
        'turn',
        [
          [17, 17],
          [22, 9],
          [24, 0],
        ],
        'limit',
      ),
      words('turn-words', [34, 16], 'turn to open', 'left'),
    ],
    'A rotary-cam buckle from the front: a round housing with a handle to turn and six tongues clicked into it.',
  )

const adjuster = (): Picture =>
  pictureOf(
    [
      stroke(
        'main',
        [
          [-120, 0],
          [-22, 0],
          [-8, 8],
          [8, 8],
          [22, 0],
          [120, 0],
        ],
        'strap',
      ),
      rectangle('body', [0, 4], [44, 22], 'focus'),
      rectangle('bar', [0, 4], [8, 6]),
      stroke(
        'tail',
        [
          [8, 8],
          [-14, 20],
          [-80, 42],
        ],
        'strap',
      ),
      ...arrow('pull', [-80, 42], 162, 40),
      words('tail-words', [-60, 56], 'tail: pull to tighten', 'centre', 'plain'),
      words('body-words', [0, -18], 'adjuster'),
    ],
    'An adjuster on a strap: pulling its tail makes the strap shorter.',
  )

const restraint = (): Picture =>
  carPicture(
    SCENE,
    {
      elevation: 'side',
      parts: ['strap/shoulder', 'body/helmet'],
      extra: [
        stroke(
          'collar',
          [
            [905, 720],
            [960, 775],
            [1040, 800],
            [1062, 900],
            [1040, 905],
            [1010, 822],
            [950, 790],
          ],
          'focus',
        ),
        stroke(
          'tether',
          [
            [1050, 890],
            [985, 940],
          ],
          'limit',
        ),
        words('words', [1100, 850], 'collar', 'left'),
        words('tether-words', [870, 1010], 'tether to the helmet', 'right', 'plain'),
      ],
    },
    'Side elevation with a collar on the shoulders under the straps, and a tether from it to the helmet.',
  )

/** A label beside straps that are picked out in the side elevation. */
const strapPicture = (
  part: string,
  at: readonly [number, number],
  text: string,
  description: string,
): Picture =>
  carPicture(
    SCENE,
    { elevation: 'side', parts: [`strap/${part}`], extra: [words('words', at, text)] },
    description,
  )

/** Pictures of the words of the belt. */
export const BELT_PICTURES: Readonly<Record<keyof typeof BELT_TERMS, () => Picture>> = {
  'shoulder-strap': () =>
    strapPicture(
      'shoulder',
      [1180, 830],
      'shoulder strap',
      'Side elevation with the shoulder straps picked out, from the buckle over the shoulder to the harness bar.',
    ),
  'lap-strap': () =>
    strapPicture(
      'lap',
      [1130, 250],
      'lap strap',
      'Side elevation with the lap straps picked out, from the buckle over the hips down to the tabs behind.',
    ),
  'sub-strap': () =>
    strapPicture(
      'sub',
      [560, 20],
      'anti-submarine strap',
      'Side elevation with the straps under the thighs picked out, from the buckle down to tabs below the seat.',
    ),
  arrangement,
  buckle: () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['buckle', 'strap/'],
        extra: [ring('buckle', [833, 345], 24, 'focus'), words('words', [790, 420], 'buckle', 'right')],
      },
      'Side elevation with the buckle marked low on the belly, where the straps meet.',
    ),
  'latch-and-link': latch,
  'rotary-cam': rotary,
  adjuster,
  'free-length': () =>
    numberPicture(
      SCENE,
      'shoulder-free-length',
      'shoulder-left',
      'The free length of a shoulder strap laid out straight, from the shoulder to the harness bar.',
    ),
  'head-and-neck-restraint': restraint,
}
