import { seatPoint } from '../../src/domain/body/pose'
import { gaussNodes } from '../../src/domain/geometry/quadrature'
import type { QuantityId, Subject } from '../../src/domain/straps/quantity'
import type { StrapScene } from '../../src/domain/straps/scene'
import type { StrapId } from '../../src/domain/straps/strap'
import type { FormulaSheet } from './formulaSheet'

export const ANGLE = (dx: string, dz: string): string => `DEGREES(ATAN2(${dx},${dz}))`
export const LENGTH2 = (dx: string, dz: string): string => `SQRT((${dx})^2+(${dz})^2)`
export const LENGTH3 = (a: string, b: string): string =>
  `SQRT(({${a}x}-{${b}x})^2+({${a}y}-{${b}y})^2+({${a}z}-{${b}z})^2)`

/** Where a quantity of the strap code stands in the sheet: the column's name is `id:subject` with the colon left out. */
export const sheetColumn = (id: QuantityId, subject: Subject): string => `${id}_${subject}`

const chestPoint = ({ chest, hip }: StrapScene['body']): { xMm: number; yMm: number; zMm: number } => ({
  xMm: chest.centre.uMm,
  yMm: hip.yMm,
  zMm: chest.centre.vMm,
})

/** Length of an ellipse with half-axes a and b between two parameters in radians: Gauss's rule, far finer than 1e-9 mm here. */
export const ELLIPSE_ARC = (a: string, b: string, from: string, to: string): string =>
  `((${to})-(${from}))/2*(${gaussNodes(24)
    .map(({ at, weight }) => {
      const angle = `((${from})+(${to}))/2+((${to})-(${from}))/2*(${at})`
      return `${weight}*SQRT(((${a})*SIN(${angle}))^2+((${b})*COS(${angle}))^2)`
    })
    .join('+')})`

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
  given('chestX', ({ pose, body }) => seatPoint(pose, chestPoint(body)).xMm)
  given('chestZ', ({ pose, body }) => seatPoint(pose, chestPoint(body)).zMm)
  given('chestA', ({ body }) => body.chest.acrossMm)
  given('chestB', ({ body }) => body.chest.alongMm)
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
  sheet.column('chestx', '{Px}+{chestX}*{c}+{chestZ}*{s}')
  sheet.column('chestz', '[hipZ]-{chestX}*{s}+{chestZ}*{c}')
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
    if (strap.startsWith('shoulder')) gateInputs(sheet, scene, strap)
  }
}

/** The lower and the upper edge of a shoulder strap's slot in the back, unturned, and how far the webbing's middle may lie across. */
const gateInputs = (sheet: FormulaSheet, scene: StrapScene, strap: StrapId): void => {
  const slot = scene.seat.slots.find(({ straps }) => straps.includes(strap))
  if (slot === undefined || slot.face !== 'back' || slot.turnDeg !== 0)
    throw new Error(`${strap} has no plain slot in the back`)
  const { xMm, yMm, zMm } = slot.centre
  seatColumns(sheet, `${strap}-lo`, { xMm, zMm: zMm - slot.heightMm / 2 })
  seatColumns(sheet, `${strap}-up`, { xMm, zMm: zMm + slot.heightMm / 2 })
  const halfMm = (slot.lengthMm - scene.belt.webbingMm.shoulder) / 2
  sheet.input(`${strap}YMin`, scene.pose.hip.yMm + yMm - halfMm)
  sheet.input(`${strap}YMax`, scene.pose.hip.yMm + yMm + halfMm)
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
