import { seatPoint } from '../../src/domain/body/pose'
import type { PointMm } from '../../src/domain/geometry/point'
import type { QuantityId, Subject } from '../../src/domain/straps/quantity'
import { gateOf, type StrapScene } from '../../src/domain/straps/scene'
import type { StrapId } from '../../src/domain/straps/strap'
import type { FormulaSheet } from './formulaSheet'

export const ANGLE = (dx: string, dz: string): string => `DEGREES(ATAN2(${dx},${dz}))`
export const LENGTH2 = (dx: string, dz: string): string => `SQRT((${dx})^2+(${dz})^2)`
export const LENGTH3 = (a: string, b: string): string =>
  `SQRT(({${a}x}-{${b}x})^2+({${a}y}-{${b}y})^2+({${a}z}-{${b}z})^2)`

/** Where a quantity of the strap code stands in the sheet: the column's name is `id:subject` with the colon left out. */
export const sheetColumn = (id: QuantityId, subject: Subject): string => `${id}_${subject}`

export const givenBodies = (sheet: FormulaSheet, scenes: readonly StrapScene[]): void => {
  const given = (name: string, read: (scene: StrapScene) => number): void => {
    sheet.given(name, scenes.map(read))
  }
  const first = scenes[0]
  if (first === undefined) return
  const { hipPoint } = first.seat
  sheet.input('hipX', hipPoint.xMm)
  sheet.input('hipY', hipPoint.yMm)
  sheet.input('hipZ', hipPoint.zMm)
  given('slide', ({ pose }) => pose.hip.xMm - hipPoint.xMm)
  given('beta', ({ pose }) => pose.reclineDeg)
  given('rise', ({ pose, body }) => {
    const up = seatPoint(pose, body.hip)
    return up.zMm
  })
  given('shoulderUp', ({ pose, body }) => seatPoint(pose, body.shoulderPoint.left).zMm)
  given('R', ({ body }) => body.shoulderArc.radiusMm)
  given('halfSpacing', ({ body }) => (body.shoulderPoint.right.yMm - body.shoulderPoint.left.yMm) / 2)
  given('boneAhead', ({ body }) => body.hip.xMm - body.frontHipBone.left.xMm)
  given('boneAbove', ({ body }) => body.frontHipBone.left.zMm - body.hip.zMm)
  given('boneHalf', ({ body }) => (body.frontHipBone.right.yMm - body.frontHipBone.left.yMm) / 2)
  given('lapR', ({ body }) => body.lapArc.radiusMm)
  given('lowest', ({ body }) => body.lapLowestDeg)
  given('groinR', ({ body }) => body.groinArc.radiusMm)
  given('hipHalf', ({ body }) => body.hipHalfBreadthMm)
  given('headUp', ({ pose, body }) => seatPoint(pose, body.helmet.centre).zMm)
  given('helmR', ({ body }) => body.helmet.radiusMm)
  sheet.column('s', 'SIN(RADIANS({beta}))')
  sheet.column('c', 'COS(RADIANS({beta}))')
  sheet.column('Px', '[hipX]+{slide}')
  sheet.column('Hx', '{Px}+{rise}*{s}')
  sheet.column('Hy', '[hipY]')
  sheet.column('Hz', '[hipZ]+{rise}*{c}')
  sheet.column('Cx', '{Px}+({shoulderUp}-{R})*{s}')
  sheet.column('Cz', '[hipZ]+({shoulderUp}-{R})*{c}')
  sheet.column('topZ', '[hipZ]+{shoulderUp}*{c}')
}

/** A seat-frame point in the vehicle frame, as two columns. */
const seatColumns = (sheet: FormulaSheet, name: string, seat: { xMm: number; zMm: number }): void => {
  sheet.input(`${name}X`, seat.xMm)
  sheet.input(`${name}Z`, seat.zMm)
  sheet.column(`${name}x`, `{Px}+[${name}X]*{c}+[${name}Z]*{s}`)
  sheet.column(`${name}z`, `[hipZ]-[${name}X]*{s}+[${name}Z]*{c}`)
}

export const givenMounts = (sheet: FormulaSheet, scene: StrapScene): void => {
  sheet.input('tail', scene.belt.adjusterTailMm)
  for (const { strap, mount } of scene.anchors) {
    if (mount.kind !== 'tab') throw new Error(`${strap} is not a tab`)
    sheet.input(`${strap}X`, mount.point.xMm)
    sheet.input(`${strap}Y`, mount.point.yMm)
    sheet.input(`${strap}Z`, mount.point.zMm)
    sheet.column(`${strap}-Tx`, `[${strap}X]`)
    sheet.column(`${strap}-Ty`, `[${strap}Y]`)
    sheet.column(`${strap}-Tz`, `[${strap}Z]`)
    sheet.input(`${strap}Plan`, mount.planDeg)
    sheet.input(`${strap}Lean`, mount.leanDeg)
    gateInputs(sheet, scene, strap)
  }
}

const gateInputs = (sheet: FormulaSheet, scene: StrapScene, strap: StrapId): void => {
  const gate = gateOf(scene, strap)
  if (gate === null || gate.upper === null) throw new Error(`${strap} has no slot`)
  const ends = { lo: gate.lower, up: gate.upper }
  for (const [end, at] of Object.entries(ends)) {
    const point: PointMm = { xMm: at.uMm, yMm: 0, zMm: at.vMm }
    seatColumns(sheet, `${strap}-${end}`, seatPoint(scene.pose, point))
  }
  sheet.input(`${strap}YMin`, gate.yMinMm ?? -1e6)
  sheet.input(`${strap}YMax`, gate.yMaxMm ?? 1e6)
}

export const twist = (sheet: FormulaSheet, strap: string, next: string): void => {
  // n = Rz(plan)·Rx(lean)·ŷ = (−sin plan·cos lean, cos plan·cos lean, sin lean)
  const d = (axis: string): string => `({${next}${axis}}-{${strap}-T${axis}})`
  sheet.column(
    sheetColumn('tab-twist', strap as Subject),
    `DEGREES(ASIN(ABS((-${d('x')}*SIN(RADIANS([${strap}Plan]))*COS(RADIANS([${strap}Lean]))` +
      `+${d('y')}*COS(RADIANS([${strap}Plan]))*COS(RADIANS([${strap}Lean]))+${d('z')}*SIN(RADIANS([${strap}Lean])))` +
      `/${LENGTH3(next, `${strap}-T`)})))`,
  )
}
