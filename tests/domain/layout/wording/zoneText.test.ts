import { describe, expect, it } from 'vitest'
import { planePoint } from '../../../../src/domain/geometry/plane'
import { boxRegion } from '../../../../src/domain/geometry/region'
import { zoneText } from '../../../../src/domain/layout/wording/zoneText'

const HIP = planePoint(0, 0)
const AT = planePoint(100, -200)

describe('zoneText', () => {
  it('says how far it may go each way, rounded down, in the words of the elevation', () => {
    const zone = boxRegion(planePoint(89.96, -260), planePoint(140, -150.04))
    expect(zoneText(zone, AT, HIP, 'side', 'mm')).toBe(
      '10 mm forward, 40 mm rearward, 49.9 mm up, 60 mm down',
    )
    expect(zoneText(zone, AT, HIP, 'top', 'mm')).toContain('49.9 mm to the right, 60 mm to the left')
  })

  it('does not call the end of what is looked at a limit', () => {
    // Zones are looked for 1500 mm about the hip point: 1400 mm are left behind an anchor 100 mm behind it.
    const zone = boxRegion(planePoint(0, -1500), planePoint(1500, 0))
    expect(zoneText(zone, AT, HIP, 'side', 'mm')).toBe(
      '100 mm forward, 1400 mm or more rearward, 200 mm up, 1300 mm or more down',
    )
  })

  it('takes a limit short of that end for a limit, on either side of the hip point', () => {
    // From 100 mm behind the hip point it is 1600 mm to the front end and 1400 mm to the rear one.
    const zone = boxRegion(planePoint(-1350, -1600), planePoint(1450, 1250))
    expect(zoneText(zone, AT, HIP, 'side', 'mm')).toBe(
      '1450 mm forward, 1350 mm rearward, 1450 mm up, 1400 mm or more down',
    )
  })

  it('tells no zone, a zone elsewhere and one that is not known yet from each other', () => {
    expect(zoneText([], AT, HIP, 'side', 'mm')).toBe('no permitted zone')
    expect(zoneText('pending', AT, HIP, 'side', 'mm')).toBe('being worked out')
    expect(zoneText(boxRegion(planePoint(0, 0), planePoint(10, 10)), AT, HIP, 'side', 'mm')).toBe(
      'outside its permitted zone',
    )
  })
})
