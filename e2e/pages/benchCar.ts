import { readFileSync } from 'node:fs'
import type { Occupant } from '../../src/domain/body/occupant'
import type { Layout } from '../../src/domain/layout/document/layout'
import type { Anchor } from '../../src/domain/straps/anchor'
import type { StrapId } from '../../src/domain/straps/strap'

/*
 * An invented car with round numbers, made so that every strap runs straight from its anchor to the body: no slots, a low back
 * that ends above the hips, over a cushion of foam that belongs to no shell.
 * The person is the template of the student rules, so that hip, shoulder arc and head are published lengths and not predictions:
 * Source: Formula SAE Rules 2026 V1, F.5.6: hip to shoulder centre 490, shoulder circle Ø200, shoulder to head 280, helmet Ø300.
 */

export const exampleFile = (name: string): string =>
  new URL(`../../public/examples/${name}.layout.json`, import.meta.url).pathname

export const exampleLayout = (name: string): Layout =>
  JSON.parse(readFileSync(exampleFile(name), 'utf8')) as Layout

export const HIP = { xMm: 1200, yMm: 360, zMm: 230 }
export const RECLINE_DEG = 20
/** Radius of the body ahead of and below the hip point: the hip's height above the cushion. */
export const GROIN_RADIUS_MM = 98
export const SHOULDER_RADIUS_MM = 100
/** Hip point to the middle of the shoulder circle along the torso line, and to its top. */
export const SHOULDER_CENTRE_MM = 490
const SHOULDER_TOP_MM = 590
/** Half the distance between the two straps on the shoulders. */
const HALF_STRAP_SPACING_MM = 100
export const BAR_RADIUS_MM = 19.05

const TEMPLATE_PERSON: Occupant = {
  id: 'template',
  name: 'Template',
  sex: 'male',
  statureMm: 1755,
  massKg: 85,
  measured: {
    hipHeightMm: GROIN_RADIUS_MM,
    hipToShoulderMm: SHOULDER_TOP_MM,
    shoulderArcRadiusMm: SHOULDER_RADIUS_MM,
    shoulderStrapSpacingMm: 2 * HALF_STRAP_SPACING_MM,
    headCentreAboveHipMm: 770,
    helmetRadiusMm: 150,
  },
}

const tab = (
  strap: StrapId,
  xMm: number,
  yMm: number,
  zMm: number,
  tubeId: string | null = null,
): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'tab',
    point: { xMm, yMm, zMm },
    planDeg: 0,
    leanDeg: 0,
    thicknessMm: 4.8,
    holeDiameterMm: 11.5,
    shear: 'double',
    tubeId,
  },
})

const wrap = (strap: StrapId, yMm: number): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'wrap',
    tubeId: 'harness-bar',
    point: { xMm: 1700, yMm, zMm: 600 },
    over: 'over',
    guideHoops: true,
  },
})

const OTHERS = [
  tab('lap-left', 1380, 130, 50),
  tab('lap-right', 1380, 590, 50),
  tab('sub-left', 1130, 310, 60),
  tab('sub-right', 1130, 410, 60),
]

const SHOULDERS = {
  tabs: [
    tab('shoulder-left', 1640, 260, 640, 'harness-bar'),
    tab('shoulder-right', 1640, 460, 640, 'harness-bar'),
  ],
  wraps: [wrap('shoulder-left', 260), wrap('shoulder-right', 460)],
}

/** `split`: each lap tab moves alone. */
export const benchCar = (
  shoulders: keyof typeof SHOULDERS = 'tabs',
  lap: 'mirrored' | 'split' = 'mirrored',
): Layout => {
  const example = exampleLayout('rock-buggy')
  const [place] = example.places
  if (place === undefined) throw new Error('the example has no place')
  const seat = {
    ...place.seat,
    hipPoint: HIP,
    hipHeightMm: GROIN_RADIUS_MM,
    reclineDeg: RECLINE_DEG,
    reclineRange: { uprightDeg: RECLINE_DEG, reclinedDeg: RECLINE_DEG },
    sideOutline: [
      { xMm: 150, zMm: 120 },
      { xMm: 185, zMm: 120 },
      { xMm: 180, zMm: 380 },
      { xMm: 150, zMm: 380 },
    ],
    backrestRim: { xMm: 165, zMm: 380 },
    slots: [],
  }
  return {
    ...example,
    job: { ...example.job, name: 'Bench car', car: 'Bench car', revision: 'C' },
    tubes: [
      {
        id: 'harness-bar',
        name: 'Harness bar',
        role: 'harness-bar',
        outsideDiameterMm: 2 * BAR_RADIUS_MM,
        wallMm: 2.4,
        points: [
          { xMm: 1700, yMm: -20, zMm: 600 },
          { xMm: 1700, yMm: 740, zMm: 600 },
        ],
      },
    ],
    places: [
      {
        ...place,
        seat,
        occupants: [TEMPLATE_PERSON],
        // Copied, so that a test may change its own layout.
        anchors: structuredClone([...SHOULDERS[shoulders], ...OTHERS]),
        mirrored: { shoulder: true, lap: lap === 'mirrored', sub: true },
      },
    ],
  }
}
