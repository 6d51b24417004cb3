import type { ReactElement } from 'react'
import type { MirroredPairs, Place } from '../domain/layout/document/layout'
import { addAnchor, withMirrored } from '../domain/layout/edit/changeAnchors'
import { strapName } from '../domain/layout/wording/names'
import { capitalised } from '../domain/layout/wording/words'
import { STRAP_IDS, strapFamily, strapsOf, type StrapId } from '../domain/straps/strap'
import { useActions, useApp } from '../state/react'
import { currentPlace } from '../state/selectors'
import { AnchorEditor } from './AnchorEditor'
import { ToggleField } from './fields/ChoiceField'

const FAMILIES = [
  { family: 'shoulder', words: 'Shoulder straps' },
  { family: 'lap', words: 'Lap straps' },
  { family: 'sub', words: 'Anti-submarine straps' },
] as const satisfies readonly { family: keyof MirroredPairs; words: string }[]

const StrapRow = (props: { readonly place: Place; readonly strap: StrapId }): ReactElement => {
  const { place, strap } = props
  const { edit } = useActions()
  const anchor = place.anchors.find((candidate) => candidate.strap === strap)
  if (anchor !== undefined) return <AnchorEditor place={place} anchor={anchor} />
  return (
    <div className="editor missing">
      <span>{capitalised(strapName(strap))}: no anchor yet</span>
      <button
        type="button"
        data-testid={`add-anchor:${strap}`}
        onClick={() =>
          edit(`Add an anchor for the ${strapName(strap)}`, (layout) => addAnchor(layout, place.id, strap))
        }
      >
        Add a tab
      </button>
    </div>
  )
}

/** The straps of the belt, and any anchor left over from another arrangement. */
const strapsAt = (place: Place, family: keyof MirroredPairs): readonly StrapId[] => {
  const ordered = strapsOf(place.belt)
  return STRAP_IDS.filter(
    (strap) =>
      strapFamily(strap) === family &&
      (ordered.includes(strap) || place.anchors.some((anchor) => anchor.strap === strap)),
  )
}

/** Where every strap of the current place is fixed to the car. */
export const AnchorsPanel = (): ReactElement | null => {
  const place = useApp(currentPlace)
  const { edit } = useActions()
  if (place === undefined) return null
  return (
    <section className="panel" aria-label="Anchors">
      {FAMILIES.map(({ family, words }) => {
        const straps = strapsAt(place, family)
        if (straps.length === 0) return null
        return (
          <section key={family} aria-label={words}>
            <div className="group-head">
              <h3>{words}</h3>
              {straps.length < 2 ? null : (
                <ToggleField
                  label="Both sides as one"
                  checked={place.mirrored[family]}
                  onChange={(isMirrored) =>
                    edit(
                      isMirrored ? `${words}: right side copies the left` : `${words}: each side alone`,
                      (layout) => withMirrored(layout, place.id, family, isMirrored),
                    )
                  }
                />
              )}
            </div>
            {straps.map((strap) => (
              <StrapRow key={strap} place={place} strap={strap} />
            ))}
          </section>
        )
      })}
    </section>
  )
}
