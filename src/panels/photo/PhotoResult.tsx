import { useMemo, useState, type ReactElement } from 'react'
import type { PlanePointMm } from '../../domain/geometry/plane'
import { LIMITS } from '../../domain/layout/document/limits'
import {
  withCameraDistance,
  withCheckLength,
  withMarksSwapped,
  withoutCheck,
} from '../../domain/layout/edit/changePhotos'
import {
  calibrationProblemText,
  checkLengthText,
  PARALLAX_WORDS,
  parallaxText,
  traceErrorText,
} from '../../domain/layout/wording/photoWords'
import type { Photo } from '../../domain/measure/photo/photo'
import {
  calibrated,
  middleOfMarks,
  type PictureMap,
  pictureCorners,
  planePointAt,
  standsOnItsHead,
} from '../../domain/measure/photo/pictureMap'
import { checkLengthMm, traceError } from '../../domain/measure/photo/traceError'
import { useActions, useApp } from '../../state/react'
import { lengthUnitOf } from '../../state/selectors'
import { LengthField } from '../fields/LengthField'
import { MarkList } from './MarkList'
import type { Crosses } from './useCrosses'

interface Props {
  readonly photo: Photo
  readonly crosses: Crosses
}

const SwapButton = ({ photo }: { readonly photo: Photo }): ReactElement => {
  const { edit } = useActions()
  const words = photo.calibration.kind === 'rectangle' ? 'front and rear corners' : 'ends of the line'
  return (
    <button
      type="button"
      disabled={photo.locked}
      onClick={() => edit(`Swap the ${words} of a photo`, (layout) => withMarksSwapped(layout, photo.id))}
    >
      Swap the {words}
    </button>
  )
}

/** What a pixel means where the crosses are, and at the worst corner of the picture. */
const Errors = ({ photo, map }: { readonly photo: Photo; readonly map: PictureMap }): ReactElement => {
  const unit = useApp(lengthUnitOf)
  const errors = useMemo(() => {
    const at = (point: PlanePointMm | null) => (point === null ? null : traceError(photo, map, point))
    const corners = pictureCorners(photo.size).flatMap((corner) => at(planePointAt(map, corner)) ?? [])
    return {
      middle: at(planePointAt(map, middleOfMarks(photo))),
      worst: corners.toSorted((a, b) => b.marksMm - a.marksMm)[0] ?? null,
    }
  }, [photo, map])
  return (
    <ul className="photo-figures">
      {errors.middle === null ? null : (
        <li data-testid="trace-error">Between the crosses: {traceErrorText(errors.middle, unit)}</li>
      )}
      {errors.worst === null ? null : (
        <li>In the worst corner of the picture: {traceErrorText(errors.worst, unit)}</li>
      )}
    </ul>
  )
}

const CheckLength = (props: Props & { readonly map: PictureMap }): ReactElement => {
  const { photo, crosses, map } = props
  const unit = useApp(lengthUnitOf)
  const { edit } = useActions()
  const measuredMm = checkLengthMm(photo, map)
  if (photo.check === undefined)
    return (
      <button
        type="button"
        disabled={photo.locked}
        onClick={() => edit('Begin a check length', (layout) => withCheckLength(layout, photo.id, null))}
      >
        Check with a second known length
      </button>
    )
  return (
    <fieldset className="point-fields" disabled={photo.locked}>
      <legend>Check with a second known length</legend>
      <MarkList photo={photo} ids={['checkFrom', 'checkTo']} crosses={crosses} />
      <LengthField
        label="Its length on the car"
        value={photo.check.lengthMm ?? null}
        limits={LIMITS.photoLengthMm}
        testId="check-length"
        onCommit={(lengthMm) =>
          edit('Type the check length of a photo', (layout) => withCheckLength(layout, photo.id, lengthMm))
        }
      />
      <p role="status" data-testid="check-result">
        {measuredMm === null
          ? 'Put both crosses; best square to the known length and far from it.'
          : checkLengthText(measuredMm, photo.check.lengthMm, unit)}
      </p>
      <button
        type="button"
        onClick={() => edit('Take a check length out', (layout) => withoutCheck(layout, photo.id))}
      >
        Take the check out
      </button>
    </fieldset>
  )
}

/** A part this much nearer is looked at first: about from a side panel to the seat. A starting value, our judgement. */
const STARTING_DEPTH_MM = 300

const Parallax = ({ photo }: { readonly photo: Photo }): ReactElement => {
  const unit = useApp(lengthUnitOf)
  const { edit } = useActions()
  const [nearerMm, setNearer] = useState(STARTING_DEPTH_MM)
  const { cameraDistanceMm } = photo
  const setDistance = (to: number | null): void =>
    edit('Type the distance of the camera', (layout) => withCameraDistance(layout, photo.id, to))
  return (
    <fieldset className="point-fields" disabled={photo.locked}>
      <legend>Parts that do not lie in that plane</legend>
      <p className="hint">{PARALLAX_WORDS}</p>
      <div className="field-row">
        <LengthField
          label="Camera from the plane"
          value={cameraDistanceMm ?? null}
          limits={LIMITS.photoLengthMm}
          hint="May be left empty."
          testId="camera-distance"
          onCommit={setDistance}
          onClear={() => setDistance(null)}
        />
        <LengthField
          label="Part nearer than the plane"
          value={nearerMm}
          limits={{ ...LIMITS.photoLengthMm, min: -LIMITS.photoLengthMm.max }}
          hint="Negative: farther."
          onCommit={setNearer}
        />
      </div>
      {cameraDistanceMm === undefined ? null : (
        <p data-testid="parallax">{parallaxText(cameraDistanceMm, nearerMm, unit)}</p>
      )}
    </fieldset>
  )
}

/** Whether the photo lies to scale, how well, and what it cannot tell. */
export const PhotoResult = (props: Props): ReactElement => {
  const { photo } = props
  const unit = useApp(lengthUnitOf)
  const found = useMemo(() => calibrated(photo), [photo])
  const isUpsideDown = found.ok && photo.elevation === 'side' && standsOnItsHead(photo, found.value)
  return (
    <section className="photo-result" aria-label="How well it fits">
      <h3>How well it fits</h3>
      <p role="status" data-testid="photo-state" data-scaled={found.ok}>
        {found.ok
          ? 'The photo lies to scale under the drawing.'
          : calibrationProblemText(found.error, photo, unit)}
      </p>
      {isUpsideDown ? (
        <p className="photo-warning">
          It stands on its head like this: the two ends of the line are swapped, or the picture was taken from
          the other side.
        </p>
      ) : null}
      {isUpsideDown || (!found.ok && found.error.kind === 'wrong-way-round') ? (
        <SwapButton photo={photo} />
      ) : null}
      {found.ok ? (
        <>
          <Errors photo={photo} map={found.value} />
          <CheckLength {...props} map={found.value} />
        </>
      ) : null}
      <Parallax photo={photo} />
    </section>
  )
}
