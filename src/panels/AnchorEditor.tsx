import type { ReactElement } from 'react'
import { nearestOnPolyline } from '../domain/geometry/segment'
import type { Tube } from '../domain/geometry/tube'
import type { Layout, Place } from '../domain/layout/document/layout'
import { LIMITS } from '../domain/layout/document/limits'
import { asTab, asWrap, removeAnchor, withAnchor } from '../domain/layout/edit/changeAnchors'
import { handleId } from '../domain/layout/edit/handles'
import { isSharedAnchor, mirrorPartner } from '../domain/layout/edit/mirror'
import { movedHandle } from '../domain/layout/edit/move'
import { startingEye } from '../domain/layout/edit/startingMount'
import { anchorName, formWords } from '../domain/layout/wording/names'
import { capitalised } from '../domain/layout/wording/words'
import { type Anchor, type AnchorForm, anchorForm, type Mount } from '../domain/straps/anchor'
import { strapSide } from '../domain/straps/strap'
import { useActions, useApp } from '../state/react'
import { ChoiceField, type Choice } from './fields/ChoiceField'
import { PointFields } from './fields/PointFields'
import { MountFields } from './MountFields'

/** The tube that a tab becomes a wrap on: the one it is welded to, else the harness bar, else the nearest there is. */
const wrapTube = (tubes: readonly Tube[], anchor: Anchor): Tube | undefined =>
  tubes.find((tube) => tube.id === anchor.mount.tubeId) ??
  tubes.toSorted(
    (a, b) =>
      Number(b.role === 'harness-bar') - Number(a.role === 'harness-bar') ||
      nearestOnPolyline(a.points, anchor.mount.point).distanceMm -
        nearestOnPolyline(b.points, anchor.mount.point).distanceMm,
  )[0]

const FORMS: readonly Choice<AnchorForm>[] = [
  { value: 'plate', words: 'Tab: one plate' },
  { value: 'clevis', words: 'Clevis: two plates, double shear' },
  { value: 'insert', words: 'Welded threaded insert' },
  { value: 'eye', words: 'Eye bolt' },
  { value: 'wrap', words: 'Wrap round a tube, three-bar slide' },
]

/** The same anchor fixed another way, where its strap now ends; null for a wrap while there is no tube. */
const inForm = (layout: Layout, place: Place, anchor: Anchor, form: AnchorForm): Mount | null => {
  if (form === 'eye') return anchor.mount.kind === 'eye' ? anchor.mount : startingEye(layout, place, anchor)
  if (form !== 'wrap') return asTab(place, anchor, form)
  const tube = wrapTube(layout.tubes, anchor)
  return tube === undefined ? null : asWrap(anchor, tube.id)
}

const FormField = (props: { readonly place: Place; readonly anchor: Anchor }): ReactElement => {
  const { place, anchor } = props
  const layout = useApp((state) => state.layout)
  const { edit, notify } = useActions()
  return (
    <ChoiceField
      label="Fixed by"
      value={anchorForm(anchor.mount)}
      choices={FORMS}
      onChange={(form) => {
        const mount = inForm(layout, place, anchor, form)
        if (mount === null)
          return notify('problem', 'There is no tube to wrap round yet. Add one under Tubes first.')
        edit(`Change the ${anchorName(anchor)} to ${formWords(form)}`, (now) =>
          withAnchor(now, place.id, anchor.id, mount),
        )
      }}
    />
  )
}

/** The right side of a pair that moves as one follows the left; its numbers are there but folded away. */
const followsOther = (place: Place, anchor: Anchor): boolean =>
  strapSide(anchor.strap) === 'right' && mirrorPartner(place, anchor) !== null

const POINT_WORDS: Readonly<Record<AnchorForm, string>> = {
  plate: 'Hole centre from the datum',
  clevis: 'Hole centre from the datum',
  insert: 'Bolt in the middle of the fitting, from the datum',
  eye: 'Centre of the eye from the datum',
  wrap: 'On the tube, from the datum',
}

const AnchorFields = (props: { readonly place: Place; readonly anchor: Anchor }): ReactElement => {
  const { place, anchor } = props
  const { edit } = useActions()
  const name = anchorName(anchor)
  const change = (words: string, mount: Anchor['mount']): void =>
    edit(`Change the ${words} of the ${name}`, (layout) => withAnchor(layout, place.id, anchor.id, mount))
  return (
    <>
      <PointFields
        legend={POINT_WORDS[anchorForm(anchor.mount)]}
        point={anchor.mount.point}
        limits={LIMITS.coordinateMm}
        onCommit={(to) =>
          edit(`Move the ${name}`, (layout) =>
            movedHandle(layout, { kind: 'anchor', placeId: place.id, anchorId: anchor.id }, to),
          )
        }
      />
      <details>
        <summary>How it is made</summary>
        <FormField place={place} anchor={anchor} />
        <MountFields mount={anchor.mount} change={change} />
      </details>
    </>
  )
}

/** One anchor: exactly where, and how it is made. */
export const AnchorEditor = (props: { readonly place: Place; readonly anchor: Anchor }): ReactElement => {
  const { place, anchor } = props
  const { edit, selectHandle } = useActions()
  const id = handleId({ kind: 'anchor', placeId: place.id, anchorId: anchor.id })
  const isSelected = useApp((state) => state.selectedHandleId === id)
  const name = anchorName(anchor)
  return (
    <section
      className="editor"
      data-selected={isSelected ? 'true' : undefined}
      aria-label={capitalised(name)}
    >
      <div className="editor-head">
        <button
          type="button"
          className="link"
          aria-pressed={isSelected}
          onClick={() => selectHandle(isSelected ? null : id)}
        >
          {capitalised(name)}
        </button>
        <button
          type="button"
          aria-label={`Remove the ${name}`}
          onClick={() => edit(`Remove the ${name}`, (layout) => removeAnchor(layout, place.id, anchor.id))}
        >
          Remove
        </button>
      </div>
      {followsOther(place, anchor) ? (
        <details>
          <summary>
            {isSharedAnchor(place, anchor.strap)
              ? 'On the same anchor as the left side; changing either changes both'
              : 'Mirrors the left side; changing either changes both'}
          </summary>
          <AnchorFields place={place} anchor={anchor} />
        </details>
      ) : (
        <AnchorFields place={place} anchor={anchor} />
      )}
    </section>
  )
}
