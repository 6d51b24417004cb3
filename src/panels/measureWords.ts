import type { BodyMeasure } from '../domain/body/occupant'

/** What to measure on the person, in words. */
export const measureWords = (measure: BodyMeasure): string => {
  switch (measure) {
    case 'sittingHeightMm':
      return 'Sitting height, seat to crown'
    case 'midShoulderHeightMm':
      return 'Middle of the shoulder above the seat'
    case 'hipToShoulderMm':
      return 'Hip point to top of shoulder'
    case 'shoulderArcRadiusMm':
      return 'Radius of the shoulder’s top'
    case 'shoulderStrapSpacingMm':
      return 'Straps apart on the shoulders'
    case 'headCentreAboveHipMm':
      return 'Middle of the head above the hip point'
    case 'helmetRadiusMm':
      return 'Radius of the helmet'
    case 'hipHeightMm':
      return 'Hip point above the compressed seat'
    case 'frontHipBoneBreadthMm':
      return 'Front hip bones apart'
    case 'pelvisTiltDeg':
      return 'Tilt of the pelvis'
    case 'lapTissueMm':
      return 'Flesh and clothing over the hip bone'
    case 'hipBreadthMm':
      return 'Hip breadth, seated'
    case 'bideltoidBreadthMm':
      return 'Breadth over the upper arms'
    case 'chestDepthMm':
      return 'Chest depth'
    case 'abdominalDepthMm':
      return 'Belly depth, seated'
    case 'thighClearanceMm':
      return 'Thigh height above the seat'
    case 'buttockKneeMm':
      return 'Buttock to front of knee'
    case 'kneeHeightMm':
      return 'Knee height, seated'
  }
}
