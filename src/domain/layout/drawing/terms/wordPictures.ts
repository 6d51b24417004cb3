import type { CAR_TERMS } from '../../wording/termsCar'
import { carPicture, drawnSitting, numberPicture, SCENE } from './carPictures'
import { measured, type Picture, ring, stroke, window43, words } from './picture'

const { body } = drawnSitting(SCENE)
const HIP = [body.hip.xMm, body.hip.zMm] as const
const SHOULDER = [body.shoulderPoint.left.xMm, body.shoulderPoint.left.zMm] as const

/** A part of the side elevation picked out and named. */
const side = (
  parts: readonly string[],
  at: readonly [number, number],
  text: string,
  description: string,
): Picture => carPicture(SCENE, { elevation: 'side', parts, extra: [words('words', at, text)] }, description)

/** Pictures of the words of the drawing, the seat and the person. */
export const CAR_PICTURES: Readonly<Record<keyof typeof CAR_TERMS, () => Picture>> = {
  'side-elevation': () =>
    carPicture(
      SCENE,
      { elevation: 'side', parts: [] },
      'A car with a seated person from its left side, front at the left.',
    ),
  'top-elevation': () =>
    carPicture(SCENE, { elevation: 'top', parts: [] }, 'The same car from above, front at the left.'),
  datum: () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['datum', 'anchor/lap-left'],
        extra: [
          measured('x', [0, 0], [1040, 0], 'x', -40),
          measured('z', [1040, 0], [1040, 88], 'z', -40),
          ring('datum', [0, 0], 16, 'focus'),
          words('words', [20, 60], 'datum', 'left'),
        ],
      },
      'Side elevation with the datum at the front and the distances x and z from it to a tab.',
    ),
  'hip-point': () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['body/thigh', 'body/trunk'],
        extra: [ring('hip', HIP, 18, 'limit'), words('words', [HIP[0] + 60, HIP[1]], 'hip point', 'left')],
      },
      'Side elevation with the hip point marked where thigh and trunk meet.',
    ),
  'torso-line': () =>
    side(
      ['torso-line'],
      [1080, 480],
      'torso line',
      'Side elevation with the line from the hip point up the trunk picked out.',
    ),
  recline: () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['torso-line'],
        extra: [
          stroke('upright', [HIP, [HIP[0], HIP[1] + 640]], 'hidden'),
          {
            kind: 'angle',
            key: 'picture/recline',
            part: null,
            apex: { uMm: HIP[0], vMm: HIP[1] },
            radiusMm: 420,
            fromDeg: 90 - body.reclineDeg,
            toDeg: 90,
            text: 'recline',
          },
        ],
      },
      'Side elevation with the angle between upright and the torso line.',
    ),
  'shoulder-point': () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['body/shoulder-left', 'strap/shoulder'],
        bounds: window43(1060, 700, 640),
        extra: [
          ring('point', SHOULDER, 12, 'focus'),
          words('words', [SHOULDER[0] + 30, SHOULDER[1] + 40], 'shoulder point', 'left'),
        ],
      },
      'The shoulder from the side with the shoulder point marked under the strap.',
    ),
  'front-hip-bone': () =>
    numberPicture(
      SCENE,
      'lap-over-asis',
      'lap-left',
      'The lap strap in side view and how far below the front hip bone it lies.',
    ),
  shell: () =>
    side(
      ['seat/outline'],
      [1130, 330],
      'shell',
      'Side elevation with the outline of the seat shell picked out.',
    ),
  rim: () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['seat/outline', 'rim', 'strap/shoulder'],
        bounds: window43(1160, 690, 640),
        extra: [words('words', [1190, 620], 'backrest rim', 'left')],
      },
      'The upper end of the backrest with the shoulder strap running over it.',
    ),
  slide: () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['seat/outline'],
        extra: [measured('slide', [HIP[0] - 60, 30], [HIP[0] + 60, 30], 'slide', -40)],
      },
      'Side elevation with the seat and an arrow fore and aft below it.',
    ),
  'strap-slot': () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['slot/lap-slot-left', 'strap/lap-left'],
        bounds: window43(960, 220, 520),
        extra: [words('words', [1030, 260], 'strap slot', 'left')],
      },
      'The side of the seat shell with an opening that the lap strap passes through.',
    ),
  'harness-bar': () =>
    carPicture(
      SCENE,
      {
        elevation: 'side',
        parts: ['tube/bar', 'strap/shoulder'],
        extra: [ring('bar', [1400, 596], 19, 'focus'), words('words', [1360, 540], 'harness bar', 'right')],
      },
      'Side elevation with the harness bar, seen on end, behind the shoulders.',
    ),
}
