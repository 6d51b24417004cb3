import type { QuantityRule } from '../../../src/domain/rules/rule'
import type { QuantityId } from '../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { solvePlace } from '../../../src/domain/straps/solve'
import type { StrapId } from '../../../src/domain/straps/strap'
import type { ZoneCase } from '../../../src/domain/zones/zone'

/** An invented rule for one quantity. */
export const quantityRule = (
  quantity: QuantityId,
  min: number | null,
  max: number | null,
  changes: Partial<QuantityRule> = {},
): QuantityRule => ({
  kind: 'quantity',
  id: `test-${quantity}`,
  level: 'should',
  source: { document: 'none', section: '', edition: '', status: 'common-practice', phrase: null },
  when: {},
  says: 'A rule made up for this test.',
  why: 'None.',
  caveat: null,
  quantity,
  family: null,
  min,
  max,
  ...changes,
})

/** The anchor of one strap in some sittings of a place. */
export const zoneCaseOf = (scenes: readonly StrapScene[], strap: StrapId, mirrored: boolean): ZoneCase => {
  const anchor = scenes[0]?.anchors.find((each) => each.strap === strap)
  if (anchor === undefined) throw new Error(`no anchor for ${strap}`)
  return {
    anchor,
    mirrored,
    scenes: scenes.map((scene, index) => ({
      sittingId: `sitting-${index}`,
      scene,
      solved: solvePlace(scene),
      context: {
        reclineDeg: scene.body.reclineDeg,
        belt: scene.belt,
        dusty: false,
        reclinesFurther: false,
        seatAdjustable: false,
        mount: anchor.mount.kind,
        strap,
      },
    })),
  }
}
