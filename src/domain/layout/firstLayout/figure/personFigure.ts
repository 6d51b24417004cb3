import type { Occupant } from '../../../body/occupant'
import { planePoint } from '../../../geometry/plane'
import type { Layout } from '../../document/layout'
import type { Primitive } from '../../drawing/primitive'
import { askedPlace } from '../askedPlace'
import { figureOf, line, type QuestionFigure } from './figure'

/** A standing person as shares of the stature, for a drawing only: feet, knees, hips, waist, shoulders, neck. Our judgement. */
const OUTLINE: readonly (readonly [number, number])[] = [
  [0.02, 0],
  [0.02, 0.27],
  [0.02, 0.48],
  [0, 0.62],
  [0.02, 0.8],
  [0.05, 0.845],
  [0.055, 0.875],
  [0.095, 0.875],
  [0.1, 0.845],
  [0.14, 0.77],
  [0.155, 0.6],
  [0.14, 0.5],
  [0.11, 0.27],
  [0.09, 0.06],
  [0.16, 0.02],
  [0.16, 0],
]
const HEAD = { fromWall: 0.075, radius: 0.065 }

const standing = ({ id, statureMm }: Occupant, wallMm: number): readonly Primitive[] => {
  const at = (fromWall: number, up: number) => planePoint(wallMm - fromWall * statureMm, up * statureMm)
  return [
    line(
      `standing/${id}`,
      OUTLINE.map(([fromWall, up]) => at(fromWall, up)),
      'body',
      true,
    ),
    {
      kind: 'circle',
      key: `asked/head/${id}`,
      part: null,
      centre: at(HEAD.fromWall, 1 - HEAD.radius),
      radiusMm: HEAD.radius * statureMm,
      style: 'body',
    },
    line(`book/${id}`, [at(0, 1), at(0.2, 1)], 'focus'),
  ]
}

/** How far apart the people of a place stand in the drawing, and how many; our judgement. */
const APART_MM = 900
const AT_MOST = 3

/** Height against a wall, under a book. */
export const personFigure = (layout: Layout): readonly QuestionFigure[] => {
  const people = askedPlace(layout).occupants.slice(0, AT_MOST)
  const wall = (index: number): number => index * APART_MM
  return [
    figureOf({
      layout,
      elevation: 'side',
      caption: 'Standing against a wall, a book flat on the head (A)',
      scenery: [],
      taped: people.map(({ statureMm }, index) => ({
        letter: 'A',
        valueMm: statureMm,
        from: planePoint(wall(index), 0),
        to: planePoint(wall(index), statureMm),
        way: 'plumb' as const,
        at: wall(index) + 220,
      })),
      focus: [
        ...people.flatMap((person, index) => standing(person, wall(index))),
        ...people.map(({ id, statureMm }, index) =>
          line(
            `wall/${id}`,
            [planePoint(wall(index), 0), planePoint(wall(index), statureMm + 80)],
            'outline',
          ),
        ),
        line('floor', [planePoint(-450, 0), planePoint(wall(people.length - 1) + 350, 0)], 'outline'),
      ],
    }),
  ]
}
