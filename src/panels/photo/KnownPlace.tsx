import { useMemo, useState, type ReactElement } from 'react'
import { projected, type PlanePointMm } from '../../domain/geometry/plane'
import type { PointMm } from '../../domain/geometry/point'
import { LIMITS } from '../../domain/layout/document/limits'
import { handlesOf } from '../../domain/layout/edit/handles'
import type { Layout } from '../../domain/layout/document/layout'
import type { Photo } from '../../domain/measure/photo/photo'
import { useApp } from '../../state/react'
import { ChoiceField, type Choice } from '../fields/ChoiceField'
import { LengthField } from '../fields/LengthField'

const TYPED = 'typed'
const DATUM = { xMm: 0, yMm: 0, zMm: 0 }

interface KnownPart {
  readonly id: string
  readonly name: string
  readonly point: PointMm
}

/** Parts of the layout whose place is known. */
const knownParts = (layout: Layout): readonly KnownPart[] => [
  {
    id: 'datum',
    name: layout.datum.trim() === '' ? 'The datum' : `The datum: ${layout.datum}`,
    point: DATUM,
  },
  ...(layout.tapePoints ?? []).map(({ id, name, point }) => ({ id: `tape:${id}`, name, point })),
  ...handlesOf(layout).filter(({ ref }) => ref.kind !== 'tube-height' && ref.kind !== 'recline'),
]

const VERTICAL = {
  side: { words: 'z up', of: 'v' },
  top: { words: 'y right', of: 'v' },
} as const

/** One coordinate waits for the other: a place is only taken over whole. */
const usePlaceDraft = (place: PlanePointMm | undefined, onPlace: (place: PlanePointMm) => void) => {
  const [draft, setDraft] = useState<Partial<PlanePointMm>>({})
  const now = { ...draft, ...place }
  const change = (part: Partial<PlanePointMm>): void => {
    const { uMm, vMm } = { ...now, ...part }
    if (uMm === undefined || vMm === undefined) return setDraft({ ...draft, ...part })
    setDraft({})
    onPlace({ uMm, vMm })
  }
  return { now, change }
}

/** Where the known point of a photo is on the drawing: a part that is there already, or typed from the datum. */
export const KnownPlace = (props: {
  readonly photo: Photo
  readonly onPlace: (place: PlanePointMm) => void
}): ReactElement => {
  const { photo, onPlace } = props
  const { elevation } = photo
  const { place } = photo.calibration
  const layout = useApp((state) => state.layout)
  const parts = useMemo(() => knownParts(layout), [layout])
  const { now, change } = usePlaceDraft(place, onPlace)
  const isAt = (point: PointMm): boolean => {
    const { uMm, vMm } = projected(point, elevation)
    return place !== undefined && uMm === place.uMm && vMm === place.vMm
  }
  const choices: readonly Choice<string>[] = [
    { value: TYPED, words: 'as typed below' },
    ...parts.map(({ id, name }) => ({ value: id, words: name })),
  ]
  return (
    <fieldset className="point-fields">
      <legend>Where that point is, from the datum</legend>
      <ChoiceField
        label="It is"
        value={parts.find(({ point }) => isAt(point))?.id ?? TYPED}
        choices={choices}
        testId="known-part"
        onChange={(id) => {
          const part = parts.find((candidate) => candidate.id === id)
          if (part !== undefined) onPlace(projected(part.point, elevation))
        }}
      />
      <div className="field-row">
        <LengthField
          label="x rearward"
          value={now.uMm ?? null}
          limits={LIMITS.coordinateMm}
          testId="known-u"
          onCommit={(uMm) => change({ uMm })}
        />
        <LengthField
          label={VERTICAL[elevation].words}
          value={now.vMm ?? null}
          limits={LIMITS.coordinateMm}
          testId="known-v"
          onCommit={(vMm) => change({ vMm })}
        />
      </div>
    </fieldset>
  )
}
