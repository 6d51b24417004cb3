import type { QuantityId, Subject } from '../../src/domain/straps/quantity'
import type { StrapScene } from '../../src/domain/straps/scene'
import { FormulaSheet } from './formulaSheet'
import {
  ANGLE,
  ELLIPSE_ARC,
  givenBodies,
  givenMounts,
  LENGTH2,
  LENGTH3,
  sheetColumn,
  twist,
} from './strapSheetCells'

/**
 * The quantities of a six-point place with tabs and a slot for every strap, written again as spreadsheet formulas from their
 * definitions, one row for each sitting. Slots in the back are met as in the side elevation; those in the side walls and the cushion are
 * taken as passed clean, and nothing is said about tubes but the helmet's distance.
 */
export const strapSheet = (scenes: readonly StrapScene[]): FormulaSheet => {
  const sheet = new FormulaSheet()
  givenBodies(sheet, scenes)
  const first = scenes[0]
  if (first === undefined) throw new Error('no sitting')
  givenMounts(sheet, first)
  shoulderRear(sheet, 'left', -1)
  shoulderRear(sheet, 'right', 1)
  lap(sheet, 'left', -1)
  lap(sheet, 'right', 1)
  sheet.column('Kx', '({lap-left-Qx}+{lap-right-Qx})/2')
  sheet.column('Ky', '{Hy}')
  sheet.column('Kz', '({lap-left-Qz}+{lap-right-Qz})/2')
  lapLength(sheet, 'left')
  lapLength(sheet, 'right')
  chest(sheet)
  shoulderFront(sheet, 'left')
  shoulderFront(sheet, 'right')
  sub(sheet, 'left')
  sub(sheet, 'right')
  pairs(sheet)
  helmet(sheet, first)
  sheet.build(scenes.length)
  return sheet
}

const shoulderRear = (sheet: FormulaSheet, side: 'left' | 'right', out: 1 | -1): void => {
  const strap = `shoulder-${side}`
  const n = (name: string): string => `${strap}-${name}`
  const c = (name: string): string => `{${n(name)}}`
  // The line over the top of the arc from a point behind it: the fall to the point plus the tangent's part.
  const drop = (x: string, z: string): string =>
    `${ANGLE(`${x}-{Cx}`, `{Cz}-${z}`)}+DEGREES(ASIN({R}/${LENGTH2(`${x}-{Cx}`, `{Cz}-${z}`)}))`
  sheet.column(n('dropT'), drop(c('Tx'), c('Tz')))
  sheet.column(n('dropLo'), drop(c('lox'), c('loz')))
  sheet.column(n('dropUp'), drop(c('upx'), c('upz')))
  sheet.column(n('drop'), `MEDIAN(${c('dropT')},${c('dropLo')},${c('dropUp')})`)
  sheet.column(n('bent'), `IF(${c('drop')}=${c('dropT')},0,1)`)
  sheet.column(n('Bx'), `{Cx}+{R}*SIN(RADIANS(${c('drop')}))`)
  sheet.column(n('By'), `{Hy}+${out}*{halfSpacing}`)
  sheet.column(n('Bz'), `{Cz}+{R}*COS(RADIANS(${c('drop')}))`)
  const gateSide = (x: string, z: string): string =>
    `((${c('upx')}-${c('lox')})*(${z}-${c('loz')})-(${c('upz')}-${c('loz')})*(${x}-${c('lox')}))`
  sheet.column(n('sideB'), gateSide(c('Bx'), c('Bz')))
  sheet.column(n('share'), `${c('sideB')}/(${c('sideB')}-${gateSide(c('Tx'), c('Tz'))})`)
  for (const axis of ['x', 'z'])
    sheet.column(
      n(`G${axis}`),
      `IF(${c('bent')}=0,${c(`B${axis}`)}+${c('share')}*(${c(`T${axis}`)}-${c(`B${axis}`)}),` +
        `IF(${c('drop')}=${c('dropLo')},${c(`lo${axis}`)},${c(`up${axis}`)}))`,
    )
  sheet.column(n('toB'), LENGTH2(`${c('Gx')}-${c('Bx')}`, `${c('Gz')}-${c('Bz')}`))
  sheet.column(n('toT'), LENGTH2(`${c('Gx')}-${c('Tx')}`, `${c('Gz')}-${c('Tz')}`))
  sheet.column(n('freeY'), `${c('By')}+${c('toB')}/(${c('toB')}+${c('toT')})*(${c('Ty')}-${c('By')})`)
  sheet.column(n('Gy'), `MEDIAN([${strap}YMin],${c('freeY')},[${strap}YMax])`)
  sheet.column(n('touch'), `IF(OR(${c('bent')}=1,${c('Gy')}<>${c('freeY')}),1,0)`)
  for (const axis of ['x', 'y', 'z'])
    sheet.column(n(`E${axis}`), `IF(${c('touch')}=1,${c(`G${axis}`)},${c(`T${axis}`)})`)
  const id = (quantity: QuantityId): string => sheetColumn(quantity, strap as Subject)
  const fall = `${ANGLE(`${c('Tx')}-${c('Gx')}`, `${c('Gz')}-${c('Tz')}`)}`
  sheet.column(id('shoulder-drop'), c('drop'))
  sheet.column(id('shoulder-to-spine'), `${c('drop')}-{beta}`)
  sheet.column(id('shoulder-rim-drop'), fall)
  sheet.column(id('shoulder-height'), `{topZ}-${c('Tz')}`)
  sheet.column(id('shoulder-plan'), ANGLE(`${c('Ex')}-${c('Bx')}`, `${-out}*(${c('Ey')}-${c('By')})`))
  sheet.column(id('shoulder-above-hip'), `${c('Ez')}-{Hz}`)
  sheet.column(id('shoulder-behind-hip'), `${c('Ex')}-{Hx}`)
  // Cross product of the plane's own direction, 120° rearward of the torso line, with the line from B to the anchorage.
  sheet.column(n('BR'), `260+ABS(${c('Ey')}-{Hy})`)
  sheet.column(
    id('shoulder-behind-fk'),
    `SIN(RADIANS({beta}+120))*(${c('Ez')}-{Hz}-${c('BR')}*{c})-COS(RADIANS({beta}+120))*(${c('Ex')}-{Hx}-${c('BR')}*{s})`,
  )
  sheet.column(
    id('shoulder-reference-plan'),
    ANGLE(`${c('Ex')}-({Hx}+530*{s})`, `${-out}*(${c('Ey')}-({Hy}+${out}*120))`),
  )
  sheet.column(id('shoulder-free-length'), `${LENGTH3(n('B'), n('E'))}+${LENGTH3(n('E'), n('T'))}`)
  sheet.column(id('shoulder-length-behind-seat'), LENGTH3(n('G'), n('T')))
  const plan = (from: string, to: string): string =>
    ANGLE(`${c(`${to}x`)}-${c(`${from}x`)}`, `${c(`${to}y`)}-${c(`${from}y`)}`)
  sheet.column(
    id('slot-bend'),
    `MAX(IF(${c('bent')}=1,ABS(${fall}-${c('drop')}),0),IF(${c('Gy')}<>${c('freeY')},ABS(${plan('G', 'T')}-${plan('B', 'G')}),0))`,
  )
  for (const axis of ['x', 'y', 'z'])
    sheet.column(n(`N${axis}`), `IF(${c('touch')}=1,${c(`G${axis}`)},${c(`B${axis}`)})`)
  twist(sheet, strap, n('N'))
}

const lap = (sheet: FormulaSheet, side: 'left' | 'right', out: 1 | -1): void => {
  const strap = `lap-${side}`
  const n = (name: string): string => `${strap}-${name}`
  const c = (name: string): string => `{${n(name)}}`
  const rising = (from: string, toX: string, toZ: string): string =>
    ANGLE(`${c(`${from}x`)}-${toX}`, `${toZ}-${c(`${from}z`)}`)
  sheet.column(n('lineT'), rising('T', '{Hx}', '{Hz}'))
  sheet.column(n('aimX'), `IF(${c('lineT')}>={lowest},{Hx},{Hx}-{lapR}*COS(RADIANS({lowest})))`)
  sheet.column(n('aimZ'), `IF(${c('lineT')}>={lowest},{Hz},{Hz}+{lapR}*SIN(RADIANS({lowest})))`)
  for (const axis of ['x', 'z']) sheet.column(n(`E${axis}`), c(`T${axis}`))
  sheet.column(n('line'), rising('E', '{Hx}', '{Hz}'))
  sheet.column(n('theta'), `MAX(${c('line')},{lowest})`)
  sheet.column(n('Qx'), `{Hx}-{lapR}*COS(RADIANS(${c('theta')}))`)
  sheet.column(n('Qy'), `{Hy}+${out}*{boneHalf}`)
  sheet.column(n('Qz'), `{Hz}+{lapR}*SIN(RADIANS(${c('theta')}))`)
  const id = (quantity: QuantityId): string => sheetColumn(quantity, strap as Subject)
  sheet.column(id('lap-angle'), c('line'))
  sheet.column(id('lap-run-angle'), rising('E', c('Qx'), c('Qz')))
  sheet.column(id('lap-shifted-angle'), rising('E', '({Hx}-64)', '({Hz}+10)'))
  sheet.column(
    id('lap-over-asis'),
    `${c('Qz')}+MAX(0,MIN(1,({Hx}-{boneAhead}-${c('Qx')})/(${c('Ex')}-${c('Qx')})))*(${c('Ez')}-${c('Qz')})-({Hz}+{boneAbove})`,
  )
  sheet.column(id('slot-bend'), '0')
}

/**
 * The way of a clean lap strap round the end of the pelvis, its length and how it meets its tab. In the plane of the strap and the
 * lateral direction, s forward from the foot of the hip point; the tangent by the angle of the tab and the arc cosine of 1/distance.
 */
const lapLength = (sheet: FormulaSheet, side: 'left' | 'right'): void => {
  const strap = `lap-${side}`
  const out = side === 'left' ? -1 : 1
  const n = (name: string): string => `${strap}-${name}`
  const c = (name: string): string => `{${n(name)}}`
  sheet.column(n('toAim'), LENGTH2(`${c('aimX')}-${c('Tx')}`, `${c('aimZ')}-${c('Tz')}`))
  sheet.column(n('fx'), `(${c('aimX')}-${c('Tx')})/${c('toAim')}`)
  sheet.column(n('fz'), `(${c('aimZ')}-${c('Tz')})/${c('toAim')}`)
  sheet.column(n('s'), `(${c('Tx')}-{Hx})*${c('fx')}+(${c('Tz')}-{Hz})*${c('fz')}`)
  sheet.column(n('off'), `(${c('Tx')}-{Hx})*${c('fz')}-(${c('Tz')}-{Hz})*${c('fx')}`)
  sheet.column(n('k'), `SQRT(1-(${c('off')}/{lapR})^2)`)
  sheet.column(n('a'), `{lapR}*${c('k')}`)
  sheet.column(n('b'), `({hipHalf}-{boneHalf})*${c('k')}`)
  sheet.column(n('X'), `${c('s')}/${c('a')}`)
  sheet.column(n('Y'), `(${out}*(${c('Ty')}-{Hy})-{boneHalf})/${c('b')}`)
  sheet.column(n('phi'), `ATAN2(${c('X')},${c('Y')})-ACOS(1/SQRT(${c('X')}^2+${c('Y')}^2))`)
  sheet.column(n('onS'), `${c('a')}*COS(${c('phi')})`)
  sheet.column(n('Sx'), `{Hx}+${c('off')}*${c('fz')}+${c('onS')}*${c('fx')}`)
  sheet.column(n('Sz'), `{Hz}-${c('off')}*${c('fx')}+${c('onS')}*${c('fz')}`)
  sheet.column(n('Sy'), `{Hy}+${out}*({boneHalf}+${c('b')}*SIN(${c('phi')}))`)
  sheet.column(
    sheetColumn('strap-length', strap as Subject),
    `${LENGTH3(n('T'), n('S'))}+${ELLIPSE_ARC(c('a'), c('b'), '0', c('phi'))}+${LENGTH3(n('Q'), 'K')}+[tail]`,
  )
  twist(sheet, strap, n('S'))
}

const NEWTON_STEPS = 12

/**
 * The front of the shoulder straps in the side plane, alike on both sides: tangent to the shoulder arc from the buckle and, where that
 * line would cut the chest, tangent to arc and chest and on from the chest. `psi` is the direction of the arc's radius where they leave it.
 */
const chest = (sheet: FormulaSheet): void => {
  sheet.column('toC', LENGTH2('{Cx}-{Kx}', '{Cz}-{Kz}'))
  sheet.column('up', `${ANGLE('{Cx}-{Kx}', '{Cz}-{Kz}')}+DEGREES(ASIN({R}/{toC}))`)
  sheet.column('front0', 'SQRT({toC}^2-{R}^2)')
  sheet.column('F0x', '{Kx}+{front0}*COS(RADIANS({up}))')
  sheet.column('F0z', '{Kz}+{front0}*SIN(RADIANS({up}))')
  const reach = (psi: string): string =>
    `SQRT(({chestA}*COS(${psi}+RADIANS({beta})))^2+({chestB}*SIN(${psi}+RADIANS({beta})))^2)`
  sheet.column('psi0', 'RADIANS({up}+90)')
  sheet.column('cut', `IF(({chestx}-{Kx})*COS({psi0})+({chestz}-{Kz})*SIN({psi0})+${reach('{psi0}')}>0,1,0)`)
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    const psi = `{psi${step}}`
    const turned = `(${psi}+RADIANS({beta}))`
    sheet.column(`reach${step}`, reach(psi))
    sheet.column(
      `psi${step + 1}`,
      `${psi}-(({chestx}-{Cx})*COS(${psi})+({chestz}-{Cz})*SIN(${psi})+{reach${step}}-{R})` +
        `/(({chestz}-{Cz})*COS(${psi})-({chestx}-{Cx})*SIN(${psi})+({chestB}^2-{chestA}^2)*SIN(${turned})*COS(${turned})/{reach${step}})`,
    )
  }
  sheet.column('psi', `IF({cut}=1,{psi${NEWTON_STEPS}},{psi0})`)
  sheet.column('Vx', '{Cx}+{R}*COS({psi})')
  sheet.column('Vz', '{Cz}+{R}*SIN({psi})')
  sheet.column('onC', `{chestA}*COS({psi}+RADIANS({beta}))/${reach('{psi}')}`)
  sheet.column('onS', `{chestB}*SIN({psi}+RADIANS({beta}))/${reach('{psi}')}`)
  sheet.column('theta1', 'ATAN2({onC},{onS})')
  sheet.column('KX', '(({Kx}-{chestx})*{c}-({Kz}-{chestz})*{s})/{chestA}')
  sheet.column('KY', '(({Kx}-{chestx})*{s}+({Kz}-{chestz})*{c})/{chestB}')
  sheet.column('thetaK', 'ATAN2({KX},{KY})+IF({KY}<0,2*PI(),0)')
  sheet.column('theta2', '{thetaK}-ACOS(MIN(1,1/SQRT({KX}^2+{KY}^2)))')
  for (const [name, theta] of [
    ['G1', '{theta1}'],
    ['G2', '{theta2}'],
  ] as const) {
    sheet.column(`${name}x`, `{chestx}+{chestA}*COS(${theta})*{c}+{chestB}*SIN(${theta})*{s}`)
    sheet.column(`${name}z`, `{chestz}-{chestA}*COS(${theta})*{s}+{chestB}*SIN(${theta})*{c}`)
  }
  sheet.column('beforeChest', LENGTH2('{G1x}-{Vx}', '{G1z}-{Vz}'))
  sheet.column('onChest', ELLIPSE_ARC('{chestA}', '{chestB}', '{theta1}', '{theta2}'))
  sheet.column('front', `IF({cut}=1,{beforeChest}+{onChest}+${LENGTH2('{Kx}-{G2x}', '{Kz}-{G2z}')},{front0})`)
  // Where the last straight piece before the buckle starts, and how far along the front that is.
  sheet.column('Lx', 'IF({cut}=1,{G2x},{Vx})')
  sheet.column('Lz', 'IF({cut}=1,{G2z},{Vz})')
  sheet.column('Lshare', 'IF({cut}=1,({beforeChest}+{onChest})/{front},0)')
}

/** From the shoulder arc down to the buckle, and what the shoulder straps press on the spine. */
const shoulderFront = (sheet: FormulaSheet, side: 'left' | 'right'): void => {
  const strap = `shoulder-${side}`
  const n = (name: string): string => `${strap}-${name}`
  const c = (name: string): string => `{${n(name)}}`
  sheet.column(n('Fx'), '{Lx}')
  sheet.column(n('Fy'), `${c('By')}+{Lshare}*({Ky}-${c('By')})`)
  sheet.column(n('Fz'), '{Lz}')
  sheet.column(n('lastLength'), LENGTH3(n('F'), 'K'))
  sheet.column(n('rearLength'), LENGTH3(n('B'), n('E')))
  const pull = (axis: string): string =>
    `((${c(`E${axis}`)}-${c(`B${axis}`)})/${c('rearLength')}+({K${axis}}-${c(`F${axis}`)})/${c('lastLength')})`
  sheet.column(n('press'), `-({s}*${pull('x')}+{c}*${pull('z')})`)
  // The arc turns from its radius at the rear contact to that at the front one.
  sheet.column(n('wrap'), `{psi}-RADIANS(90-${c('drop')})`)
  sheet.column(
    sheetColumn('strap-length', strap as Subject),
    `${sumOf([`{${sheetColumn('shoulder-free-length', strap as Subject)}}`, `{R}*${c('wrap')}`, `SQRT({front}^2+({Ky}-${c('By')})^2)`, '[tail]'])}`,
  )
}

const sumOf = (parts: readonly string[]): string => parts.join('+')

const sub = (sheet: FormulaSheet, side: 'left' | 'right'): void => {
  const strap = `sub-${side}`
  const n = (name: string): string => `${strap}-${name}`
  const c = (name: string): string => `{${n(name)}}`
  sheet.column(n('r'), `MIN({groinR},${LENGTH2('{Kx}-{Hx}', '{Kz}-{Hz}')})`)
  sheet.column(n('TH'), LENGTH2(`{Hx}-${c('Tx')}`, `{Hz}-${c('Tz')}`))
  sheet.column(n('KH'), LENGTH2('{Hx}-{Kx}', '{Hz}-{Kz}'))
  sheet.column(
    n('clear'),
    `-(({Kx}-${c('Tx')})*({Hz}-${c('Tz')})-({Kz}-${c('Tz')})*({Hx}-${c('Tx')}))/${LENGTH2(`{Kx}-${c('Tx')}`, `{Kz}-${c('Tz')}`)}`,
  )
  sheet.column(n('straight'), `IF(${c('clear')}>=${c('r')},1,0)`)
  sheet.column(
    n('upDeg'),
    `${ANGLE(`{Hx}-${c('Tx')}`, `{Hz}-${c('Tz')}`)}+DEGREES(ASIN(${c('r')}/${c('TH')}))`,
  )
  sheet.column(n('downDeg'), `${ANGLE('{Hx}-{Kx}', '{Hz}-{Kz}')}-DEGREES(ASIN(MIN(1,${c('r')}/${c('KH')})))`)
  sheet.column(n('low'), `SQRT(${c('TH')}^2-${c('r')}^2)`)
  sheet.column(n('high'), `SQRT(MAX(0,${c('KH')}^2-${c('r')}^2))`)
  sheet.column(n('Lx'), `IF(${c('straight')}=1,{Kx},${c('Tx')}+${c('low')}*COS(RADIANS(${c('upDeg')})))`)
  sheet.column(n('Lz'), `IF(${c('straight')}=1,{Kz},${c('Tz')}+${c('low')}*SIN(RADIANS(${c('upDeg')})))`)
  // Going up the arc turns the strap from its lower run's direction to the reverse of the upper run's.
  sheet.column(n('arc'), `IF(${c('straight')}=1,0,${c('r')}*RADIANS(${c('upDeg')}-(${c('downDeg')}+180)))`)
  sheet.column(n('lowRun'), LENGTH2(`${c('Lx')}-${c('Tx')}`, `${c('Lz')}-${c('Tz')}`))
  sheet.column(n('flat'), `${c('lowRun')}+IF(${c('straight')}=1,0,${c('arc')}+${c('high')})`)
  sheet.column(n('Ly'), `${c('Ty')}+${c('lowRun')}/${c('flat')}*({Hy}-${c('Ty')})`)
  const id = (quantity: QuantityId): string => sheetColumn(quantity, strap as Subject)
  sheet.column(n('run'), ANGLE(`${c('Lz')}-${c('Tz')}`, `${c('Tx')}-${c('Lx')}`))
  sheet.column(id('sub-to-vertical'), c('run'))
  sheet.column(id('sub-to-chest'), `${c('run')}-${ANGLE('{F0z}-{Kz}', '{Kx}-{F0x}')}`)
  sheet.column(id('slot-bend'), '0')
  sheet.column(id('strap-length'), `SQRT(${c('flat')}^2+({Hy}-${c('Ty')})^2)+[tail]`)
  twist(sheet, strap, n('L'))
}

const pairs = (sheet: FormulaSheet): void => {
  sheet.column(
    sheetColumn('shoulder-spacing', 'shoulder-pair'),
    LENGTH3('shoulder-left-T', 'shoulder-right-T'),
  )
  sheet.column(
    sheetColumn('spine-load-share', 'shoulder-pair'),
    '({shoulder-left-press}+{shoulder-right-press})/2',
  )
  sheet.column(sheetColumn('lap-off-centre', 'lap-left'), '{Hy}-{lap-left-Ty}')
  sheet.column(sheetColumn('lap-off-centre', 'lap-right'), '{lap-right-Ty}-{Hy}')
  sheet.column(sheetColumn('lap-spacing', 'lap-pair'), '{lap-right-Ty}-{lap-left-Ty}')
  for (const family of ['shoulder', 'lap', 'sub'] as const)
    sheet.column(
      sheetColumn(`${family}-mirror`, `${family}-pair`),
      LENGTH2(`{${family}-left-Tx}-{${family}-right-Tx}`, `{${family}-left-Tz}-{${family}-right-Tz}`),
    )
  sheet.column(sheetColumn('sub-spacing', 'sub-pair'), '{sub-right-Ty}-{sub-left-Ty}')
}

const helmet = (sheet: FormulaSheet, scene: StrapScene): void => {
  const head = { x: '({Px}+{headUp}*{s})', y: '{Hy}', z: '([hipZ]+{headUp}*{c})' }
  const gaps: string[] = []
  for (const tube of scene.tubes)
    for (const [index, b] of tube.points.slice(1).entries()) {
      const a = tube.points[index]
      if (a === undefined) continue
      const name = `tube-${gaps.length}`
      const d = { x: b.xMm - a.xMm, y: b.yMm - a.yMm, z: b.zMm - a.zMm }
      const from = { x: `(${head.x}-(${a.xMm}))`, y: `(${head.y}-(${a.yMm}))`, z: `(${head.z}-(${a.zMm}))` }
      sheet.column(
        `${name}-t`,
        `MAX(0,MIN(1,(${from.x}*(${d.x})+${from.y}*(${d.y})+${from.z}*(${d.z}))/${d.x ** 2 + d.y ** 2 + d.z ** 2}))`,
      )
      sheet.column(
        name,
        `SQRT((${from.x}-{${name}-t}*(${d.x}))^2+(${from.y}-{${name}-t}*(${d.y}))^2+(${from.z}-{${name}-t}*(${d.z}))^2)-${tube.outsideDiameterMm / 2}`,
      )
      gaps.push(`{${name}}`)
    }
  sheet.column(sheetColumn('helmet-clearance', 'head'), `MIN(${gaps.join(',')})-{helmR}`)
}
