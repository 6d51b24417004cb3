import { placeZones } from '../../evaluate/evaluateLayout'
import type { OUR_TERMS } from '../../wording/termsOurs'
import type { Primitive } from '../primitive'
import { zonePrimitives } from '../zonePrimitives'
import { drawnPlaces } from '../drawnPlace'
import { PLAIN_DRAWING } from '../options'
import { carPicture, type CarView, evaluated, SCENE } from './carPictures'
import { arrow, measured, type Picture, pictureOf, rectangle, ring, stroke, window43, words } from './picture'
import { sceneLayout } from './sceneLayout'

/** About the left lap tab, where rules of the lap straps show. */
const AT_LAP = window43(960, 190, 560)
const LAP = [1040, 88] as const
const LAP_PARTS = ['anchor/lap-left', 'strap/lap-left'] as const

const atLap = (extra: readonly Primitive[], description: string): Picture =>
  carPicture(SCENE, { elevation: 'side', parts: LAP_PARTS, bounds: AT_LAP, extra }, description)

/** The zone of the left lap tab, its edges as lines: pictures know no hatch. */
const zone = (): Picture => {
  const zones = placeZones(SCENE.layout, 'place-1')
  const places = drawnPlaces(
    SCENE.layout,
    { ...SCENE.evaluation, places: SCENE.evaluation.places.map((place) => ({ ...place, zones })) },
    { ...PLAIN_DRAWING, lengthUnit: 'mm', zones: ['lap-left'] },
  )
  const edges = places
    .flatMap((place) => zonePrimitives(place, 'side', ['lap-left']))
    .flatMap((primitive) => (primitive.kind === 'zone' ? primitive.edges : []))
  return atLap(
    [
      ...edges.map(([from, to], index) =>
        stroke(
          `edge/${index}`,
          [
            [from.uMm, from.vMm],
            [to.uMm, to.vMm],
          ],
          'limit',
        ),
      ),
      words('words', [1150, 30], 'zone', 'left'),
    ],
    'The left lap tab and, about it, the limits of where it may lie.',
  )
}

/** One rule of the rule set about the lap straps, drawn as the drawing shows a finding in hand. */
const lapFinding = (): string => {
  const finding = SCENE.evaluation.places[0]?.findings.find(
    ({ quantity, subject }) => quantity === 'lap-angle' && subject === 'lap-left',
  )
  if (finding === undefined) throw new Error('the workshop rules have no lap angle')
  return finding.id
}

const focused = (
  shift: { readonly lapBackMm?: number },
  description: string,
  extra: readonly Primitive[] = [],
): Picture => {
  const view: CarView = {
    elevation: 'side',
    parts: [],
    bounds: window43(1010, 200, 760),
    options: { focusedFindingId: lapFinding(), textHeightMm: 760 / 21, within: window43(1010, 200, 740) },
    extra,
  }
  return carPicture(evaluated(sceneLayout(shift)), view, description)
}

const twoPlaces = (): Picture => {
  const car = sceneLayout()
  const places = car.places.flatMap((place) => [
    { ...place, id: 'driver', seat: moved(place, -300), anchors: [] },
    { ...place, id: 'co-driver', seat: moved(place, 300), anchors: [] },
  ])
  const tubes = car.tubes
    .filter(({ id }) => id === 'thigh-tube')
    .map((tube) => ({ ...tube, points: tube.points.map((point) => ({ ...point, yMm: 2 * point.yMm })) }))
  return carPicture(
    evaluated({ ...car, places, tubes }),
    {
      elevation: 'top',
      parts: [],
      extra: [words('1', [250, -300], 'place 1', 'left'), words('2', [250, 300], 'place 2', 'left')],
    },
    'Two seats with people beside each other from above: two places.',
  )
}

const moved = (place: ReturnType<typeof sceneLayout>['places'][number], byMm: number) => ({
  ...place.seat,
  hipPoint: { ...place.seat.hipPoint, yMm: byMm },
})

const sittings = (): Picture => {
  const car = sceneLayout()
  const places = car.places.map((place) => ({
    ...place,
    seat: { ...place.seat, slide: { forwardMm: 80, rearwardMm: 40 } },
  }))
  return carPicture(
    evaluated({ ...car, places }),
    { elevation: 'side', parts: [], options: { ghosts: true } },
    'Side elevation with the same person drawn thinly in the other positions of the seat.',
  )
}

const sheet = (): Picture =>
  pictureOf(
    [
      rectangle('page', [0, 0], [210, 297], 'outline'),
      rectangle('side', [-40, 60], [110, 90], 'tube'),
      rectangle('rows', [0, -60], [180, 80], 'tube'),
      ...[-30, -45, -60, -75, -90].map((v) =>
        stroke(
          `row/${v}`,
          [
            [-90, v],
            [90, v],
          ],
          'dimension',
        ),
      ),
      rectangle('detail', [60, 60], [56, 90], 'tube'),
      stroke(
        'scale',
        [
          [-90, -125],
          [10, -125],
        ],
        'outline',
      ),
      words('head', [-90, 130], 'Mount sheet', 'left'),
      words('drawing', [-40, 60], 'drawings', 'centre', 'plain'),
      words('table', [0, -18], 'all anchors', 'centre', 'plain'),
      words('bar', [16, -125], 'scale bar', 'left', 'plain'),
    ],
    'A page with drawings, a table of every anchor and a bar to measure the print’s scale by.',
  )

/** Pictures of the words that have their meaning only here. */
export const OUR_PICTURES: Readonly<Record<keyof typeof OUR_TERMS, () => Picture>> = {
  layout: () =>
    carPicture(
      SCENE,
      { elevation: 'side', parts: [] },
      'Tubes, a seat, a person, straps and anchors of one car in side elevation.',
    ),
  place: twoPlaces,
  sitting: sittings,
  'rule-set': () => focused({}, 'The lap strap between the two limit lines of the rule about its angle.'),
  finding: () =>
    focused(
      { lapBackMm: 90 },
      'A lap strap that lies outside the limit lines of its angle, drawn as broken.',
    ),
  room: () =>
    atLap(
      [
        measured('room', LAP, [LAP[0] + 60, LAP[1]], 'room', -30),
        stroke(
          'limit',
          [
            [LAP[0] + 60, 0],
            [LAP[0] + 60, 240],
          ],
          'limit',
        ),
        words('words', [LAP[0] + 70, 200], 'flips here', 'left', 'plain'),
      ],
      'A lap tab, and the distance it can still be moved to the rear before a rule is broken.',
    ),
  zone,
  remedy: () =>
    carPicture(
      evaluated(sceneLayout({ lapBackMm: 90 })),
      {
        elevation: 'side',
        parts: LAP_PARTS,
        bounds: AT_LAP,
        extra: [
          ...arrow('remedy', [LAP[0] + 90, LAP[1] - 40], 180, 80),
          words('words', [LAP[0] + 50, LAP[1] - 75], 'forward by so much'),
        ],
      },
      'A lap tab too far back with an arrow that says how far forward it has to go.',
    ),
  tolerance: () =>
    atLap(
      [ring('tolerance', LAP, 30, 'limit'), words('words', [LAP[0] + 50, LAP[1] - 30], 'may be off', 'left')],
      'A lap tab with a circle about its hole: where welding may put it.',
    ),
  'mount-sheet': sheet,
  'as-welded': () =>
    atLap(
      [
        ring('welded', [LAP[0] + 14, LAP[1] + 9], 9, 'broken'),
        words('words', [LAP[0] + 36, LAP[1] + 30], 'as welded', 'left'),
        words('plan', [LAP[0] - 40, LAP[1] - 40], 'as planned', 'right', 'plain'),
      ],
      'A planned lap tab, and beside it where its hole was measured on the car.',
    ),
  variant: () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: [],
        extra: [
          stroke(
            'other',
            [
              [1022, 759],
              [1400, 690],
            ],
            'limit',
          ),
          ring('bar', [1400, 690], 24, 'limit'),
          words('words', [1360, 850], 'or so', 'right'),
        ],
      },
      'Side elevation with a second, dashed position of the harness bar.',
    ),
}
