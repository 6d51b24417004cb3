import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { isWithin } from '../../../src/domain/rules/check'
import { solvePlace } from '../../../src/domain/straps/solve'
import { valueAfter } from '../../../src/domain/zones/afterMove'
import { type Move, moveOf, movedScene, sceneOf, stepMove, trialAfter } from '../../../src/domain/zones/move'
import { remedyFor } from '../../../src/domain/zones/remedy'
import { solvedValue } from '../../../src/domain/zones/subject'
import { anyScene } from '../straps/arbitraryScenes'
import { bar } from '../straps/scenes'
import { quantityRule, zoneCaseOf } from './zoneCases'

const DIRECTIONS = ['up', 'down', 'forward', 'rearward', 'inward', 'outward'] as const

describe('valueAfter', () => {
  it('is what solving the whole place anew gives, for every number of a strap or pair that moved', () => {
    let seen = 0
    let through = 0
    fc.assert(
      fc.property(
        anyScene,
        fc.constantFrom('shoulder-left', 'lap-right', 'sub-left'),
        fc.constantFrom(...DIRECTIONS),
        fc.integer({ min: 1, max: 120 }),
        fc.boolean(),
        (car, strap, direction, byMm, mirrored) => {
          // A tube below and behind the hips, now and then in the way of a strap.
          const { xMm, zMm } = car.body.hip
          const scene = { ...car, tubes: [...car.tubes, bar(xMm + 90, zMm - 110, 40, 'beam')] }
          const zoneCase = zoneCaseOf([scene], strap, mirrored)
          const move = moveOf(direction, byMm, zoneCase)
          const trial = move && trialAfter(scene, [move])
          if (trial === null) return
          const solved = solvePlace(sceneOf(scene, trial))
          const family = strap.slice(0, strap.indexOf('-'))
          const about = [strap, `${family}-pair`]
          const [zoneScene] = zoneCase.scenes
          if (zoneScene === undefined) throw new Error('no sitting')
          const wrong: string[] = []
          // Also what had a number before and has none now.
          through += solved.problems.filter(
            (each) => each.kind === 'through-tube' && each.strap === strap,
          ).length
          for (const { id, subject } of [...zoneScene.solved.quantities, ...solved.quantities]) {
            if (!about.includes(subject)) continue
            seen += 1
            const expected = solvedValue(solved, id, subject)
            const found = valueAfter(zoneScene, trial, id, subject)
            const isSame =
              expected === null || found === null ? found === expected : Math.abs(found - expected) < 1e-9
            if (!isSame) wrong.push(`${id} of ${subject}: ${found}, not ${expected}`)
          }
          expect(wrong).toEqual([])
        },
      ),
      { numRuns: 300 },
    )
    expect(seen).toBeGreaterThan(1000)
    expect(through).toBeGreaterThan(10)
  })
})

describe('remedyFor, against every smaller move', () => {
  it('is the smallest whole millimetre along any way, in random places', () => {
    const asked = [
      { rule: quantityRule('shoulder-drop', -5, 5), strap: 'shoulder-left' },
      { rule: quantityRule('lap-angle', 45, 60), strap: 'lap-left' },
      { rule: quantityRule('sub-to-vertical', 0, 20), strap: 'sub-right' },
      { rule: quantityRule('lap-spacing', 350, 500), strap: 'lap-left' },
    ] as const
    let seen = 0
    fc.assert(
      fc.property(anyScene, fc.constantFrom(...asked), (scene, { rule, strap }) => {
        const zoneCase = zoneCaseOf([scene], strap, true)
        const subject = rule.quantity === 'lap-spacing' ? 'lap-pair' : strap
        const isKept = (moves: readonly Move[]): boolean => {
          const moved = movedScene(scene, moves)
          const value = moved && solvedValue(solvePlace(moved), rule.quantity, subject)
          return value !== null && isWithin(value, rule)
        }
        fc.pre(!isKept([]))
        const remedy = remedyFor({ rule, zoneCase, rules: [rule] })
        if (remedy.kind !== 'move-anchors' && remedy.kind !== 'move-tube') return
        seen += 1
        expect(isKept([stepMove(remedy)])).toBe(true)
        for (const direction of DIRECTIONS) {
          const way = moveOf(direction, 1, zoneCase)
          if (way === null) continue
          for (let byMm = 1; byMm < remedy.byMm; byMm += 1)
            if (isKept([{ ...way, byMm }]))
              throw new Error(`${direction} ${byMm} does, not only ${remedy.byMm}`)
        }
      }),
      { numRuns: 60 },
    )
    expect(seen).toBeGreaterThan(15)
  })
})
