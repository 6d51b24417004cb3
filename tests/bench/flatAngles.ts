import type { StrapScene } from '../../src/domain/straps/scene'

/** A scene as plain numbers: recline, hip, shoulder arc, pelvis, groin, and the six mounts in the order of `MOUNTS`. */
export type FlatScene = Float64Array

const MOUNTS = ['shoulder-left', 'shoulder-right', 'lap-left', 'lap-right', 'sub-left', 'sub-right'] as const

export const flatGiven = ({ body, anchors }: StrapScene): FlatScene => {
  const mounts = MOUNTS.flatMap((strap) => {
    const point = anchors.find((anchor) => anchor.strap === strap)?.mount.point
    if (point === undefined) throw new Error(`no ${strap}`)
    return [point.xMm, point.yMm, point.zMm]
  })
  return Float64Array.from([
    body.reclineDeg,
    body.hip.xMm,
    body.hip.yMm,
    body.hip.zMm,
    body.hipHalfBreadthMm,
    body.shoulderArc.radiusMm,
    body.shoulderPoint.right.yMm - body.hip.yMm,
    Math.hypot(body.shoulderArc.centre.uMm - body.hip.xMm, body.shoulderArc.centre.vMm - body.hip.zMm),
    body.lapArc.radiusMm,
    body.frontHipBone.right.yMm - body.hip.yMm,
    body.hip.xMm - body.frontHipBone.right.xMm,
    body.frontHipBone.right.zMm - body.hip.zMm,
    body.groinArc.radiusMm,
    ...mounts,
    ...MOUNTS.flatMap((strap) => {
      const mount = anchors.find((anchor) => anchor.strap === strap)?.mount
      return mount?.kind === 'tab' ? [mount.planDeg, mount.leanDeg] : [0, 0]
    }),
  ])
}

const DEG = 180 / Math.PI

/** How far a pull (dx, dy, dz) is out of the plane of the tab of mount `index`, degrees. */
const twistDeg = (g: FlatScene, index: number, dx: number, dy: number, dz: number): number => {
  const plan = (g[31 + 2 * index] ?? 0) / DEG
  const lean = (g[32 + 2 * index] ?? 0) / DEG
  const out = (dy * Math.cos(plan) - dx * Math.sin(plan)) * Math.cos(lean) + dz * Math.sin(lean)
  return Math.asin(Math.min(1, Math.abs(out) / Math.sqrt(dx * dx + dy * dy + dz * dz))) * DEG
}

/**
 * The angles and lengths of the straps by their closed forms, straight from the numbers, added up so that nothing is left out: the fall,
 * plan angle, height and length of both shoulder straps, the lap angles, the height over the hip bone and the length round the end of the
 * pelvis (as if straight) of both lap straps, both angles and the length of both anti-submarine straps, the twist of all six tabs, where
 * the shoulder mounts lie from the points that road law draws, the load on the spine.
 */
export const flatAngles = (g: FlatScene): number => {
  const n = (index: number): number => g[index] ?? 0
  const beta = n(0) / DEG
  const s = Math.sin(beta)
  const c = Math.cos(beta)
  const [hx, hy, hz, r, arc] = [n(1), n(2), n(3), n(8), n(5)]
  const cx = hx + n(7) * s
  const cz = hz + n(7) * c
  let sum = 0
  let kx = 0
  let kz = 0
  for (let side = 0; side < 2; side += 1) {
    const at = 19 + 3 * side
    const dx = n(at) - hx
    const dz = hz - n(at + 2)
    const line = Math.atan2(dz, dx)
    const qx = hx - r * Math.cos(line)
    const qz = hz + r * Math.sin(line)
    kx += qx / 2
    kz += qz / 2
    const run = Math.sqrt((n(at) - qx) ** 2 + (qz - n(at + 2)) ** 2)
    const out = Math.abs(n(at + 1) - hy) - n(9)
    const x = -Math.sqrt(dx * dx + dz * dz) / r
    const y = out / (n(4) - n(9))
    const d2 = x * x + y * y
    const t = Math.sqrt(d2 - 1)
    sum += line * DEG + Math.atan2(qz - n(at + 2), n(at) - qx) * DEG
    sum += Math.atan2(hz + 10 - n(at + 2), n(at) - hx + 64) * DEG
    sum += qz + (n(10) / run) * (n(at + 2) - qz) - n(11)
    sum += twistDeg(g, 2 + side, qx - n(at), out, qz - n(at + 2))
    sum += Math.sqrt(run * run + out * out) + Math.atan2((y - x * t) / d2, (x + y * t) / d2) * r
  }
  const toK = Math.sqrt((cx - kx) ** 2 + (cz - kz) ** 2)
  const up = Math.atan2(cz - kz, cx - kx) + Math.asin(arc / toK)
  for (let side = 0; side < 2; side += 1) {
    const at = 13 + 3 * side
    const sign = 2 * side - 1
    const by = hy + sign * n(6)
    const dx = n(at) - cx
    const dz = cz - n(at + 2)
    const away = Math.sqrt(dx * dx + dz * dz)
    const drop = Math.atan2(dz, dx) + Math.asin(arc / away)
    const free = Math.sqrt(away * away - arc * arc)
    const dy = n(at + 1) - by
    const plan = Math.atan2(-sign * dy, free * Math.cos(drop))
    const length = Math.sqrt(free * free + dy * dy)
    sum += drop * DEG + (drop - beta) * DEG + plan * DEG + length + n(at + 2) - hz
    sum += twistDeg(g, side, -free * Math.cos(drop), -dy, free * Math.sin(drop))
    const b = 260 + Math.abs(n(at + 1) - hy)
    const normal = beta + Math.PI / 6
    sum += (n(at) - hx - b * s) * Math.sin(normal) + (n(at + 2) - hz - b * c) * Math.cos(normal)
    sum += Math.atan2(120 - sign * (n(at + 1) - hy), n(at) - hx - 530 * s) * DEG
    sum += Math.sqrt(toK * toK - arc * arc + (hy - by) ** 2) + arc * (up + drop)
    sum +=
      s * ((free / length) * Math.cos(drop) - Math.cos(up)) -
      c * ((free / length) * Math.sin(drop) + Math.sin(up))
  }
  const groin = Math.min(n(12), Math.sqrt((kx - hx) ** 2 + (kz - hz) ** 2))
  for (let side = 0; side < 2; side += 1) {
    const at = 25 + 3 * side
    const dx = hx - n(at)
    const dz = hz - n(at + 2)
    const away = Math.sqrt(dx * dx + dz * dz)
    const rise = Math.atan2(dz, dx) + Math.asin(groin / away)
    const low = Math.sqrt(away * away - groin * groin)
    const back = Math.atan2(cz - kz, cx - kx)
    sum += (Math.PI / 2 - rise) * DEG + (back - rise) * DEG
    sum += twistDeg(g, 4 + side, low * Math.cos(rise), hy - n(at + 1), low * Math.sin(rise))
    sum += Math.sqrt((low + groin) ** 2 + (hy - n(at + 1)) ** 2)
  }
  return sum
}
