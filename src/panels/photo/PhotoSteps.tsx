import type { ReactElement, ReactNode } from 'react'
import { LIMITS } from '../../domain/layout/document/limits'
import {
  withCalibration,
  withCalibrationKind,
  withPhotoMirrored,
} from '../../domain/layout/edit/changePhotos'
import { markWords } from '../../domain/layout/wording/photoWords'
import {
  type LengthCalibration,
  type Photo,
  RECTANGLE_MARKS,
  type RectangleCalibration,
} from '../../domain/measure/photo/photo'
import { useActions } from '../../state/react'
import { ChoiceField, SwitchField } from '../fields/ChoiceField'
import { AngleField, LengthField } from '../fields/LengthField'
import { KnownPlace } from './KnownPlace'
import { MarkList } from './MarkList'
import type { Crosses } from './useCrosses'

interface StepProps {
  readonly photo: Photo
  readonly crosses: Crosses
}

const Step = (props: {
  readonly title: string
  readonly about: string
  readonly children: ReactNode
}): ReactElement => (
  <li className="photo-step">
    <h3>{props.title}</h3>
    <p className="hint">{props.about}</p>
    {props.children}
  </li>
)

const FACINGS = {
  side: {
    about:
      'The drawing has the front of the car at the left. A picture with the front at the right was taken from the other side; it is drawn as in a mirror, so that the front comes to the left.',
    label: 'In the picture the front of the car is at the',
    plain: 'left',
    mirrored: 'right',
  },
  top: {
    about:
      'The drawing looks down on the car. A picture from below, as on a lift, is drawn as in a mirror. However it is turned, the crosses turn it right.',
    label: 'The picture was taken from',
    plain: 'above',
    mirrored: 'below',
  },
} as const

/** The drawing looks from one side only; a picture from the other is turned over as in a mirror. */
const FacingStep = ({ photo }: StepProps): ReactElement => {
  const { edit } = useActions()
  const { about, label, plain, mirrored } = FACINGS[photo.elevation]
  return (
    <Step title="From which side" about={about}>
      <SwitchField
        label={label}
        value={photo.mirrored ? 'mirrored' : 'plain'}
        choices={[
          { value: 'plain', words: plain },
          { value: 'mirrored', words: mirrored },
        ]}
        onChange={(side) =>
          edit('Change the side of a photo', (layout) =>
            withPhotoMirrored(layout, photo.id, side === 'mirrored'),
          )
        }
      />
    </Step>
  )
}

const KINDS = [
  { value: 'known-length', words: 'a length and a level' },
  { value: 'rectangle', words: 'a rectangle' },
] as const

const KindStep = ({ photo }: StepProps): ReactElement => {
  const { edit } = useActions()
  const { kind } = photo.calibration
  return (
    <Step
      title="What is known"
      about="With a rectangle, such as a door opening or a board that is held up, the picture is straightened: the camera need not have looked squarely. With a length alone it must have."
    >
      <SwitchField
        label="The scale comes from"
        value={kind}
        choices={KINDS}
        onChange={(value) =>
          edit('Change how a photo is scaled', (layout) => withCalibrationKind(layout, photo.id, value))
        }
      />
    </Step>
  )
}

const RUNS = {
  side: [
    { value: 'level', words: 'level' },
    { value: 'plumb', words: 'plumb' },
  ],
  top: [
    { value: 'level', words: 'along the car' },
    { value: 'plumb', words: 'across the car' },
  ],
} as const

const LengthSteps = (props: StepProps & { readonly calibration: LengthCalibration }): ReactElement => {
  const { photo, crosses, calibration } = props
  const { edit } = useActions()
  const change = (words: string, patch: Partial<Omit<LengthCalibration, 'kind' | 'marks'>>): void =>
    edit(words, (layout) => withCalibration(layout, photo.id, 'known-length', patch))
  return (
    <>
      <Step
        title="The known length"
        about="Something long that lies in the plane you want to trace: a tape, a straight edge, the wheelbase."
      >
        <MarkList photo={photo} ids={['lengthFrom', 'lengthTo']} crosses={crosses} />
        <LengthField
          label="Its length"
          value={calibration.lengthMm ?? null}
          limits={LIMITS.photoLengthMm}
          testId="known-length"
          onCommit={(lengthMm) => change('Type the known length of a photo', { lengthMm })}
        />
      </Step>
      <Step
        title="The line that turns it upright"
        about="Two points far apart on something that runs true on the car as it is drawn: the floor, a level, a plumb line."
      >
        <SwitchField
          label="The line runs"
          value={calibration.runs}
          choices={RUNS[photo.elevation]}
          onChange={(runs) => change('Change the line of a photo', { runs })}
        />
        <MarkList photo={photo} ids={['levelFrom', 'levelTo']} crosses={crosses} />
      </Step>
      <Step
        title="The known point"
        about="One point whose place is known: the datum, a seat bolt, a point measured with the tape."
      >
        <MarkList photo={photo} ids={['known']} crosses={crosses} />
        <KnownPlace photo={photo} onPlace={(place) => change('Type where a photo lies', { place })} />
      </Step>
    </>
  )
}

const SIZES = {
  side: { width: 'Length, front to rear', height: 'Height' },
  top: { width: 'Length, front to rear', height: 'Width across the car' },
} as const

const RectangleSteps = (props: StepProps & { readonly calibration: RectangleCalibration }): ReactElement => {
  const { photo, crosses, calibration } = props
  const { edit } = useActions()
  const change = (words: string, patch: Partial<Omit<RectangleCalibration, 'kind' | 'marks'>>): void =>
    edit(words, (layout) => withCalibration(layout, photo.id, 'rectangle', patch))
  return (
    <>
      <Step
        title="The rectangle"
        about="Four corners that are square to each other, in the plane you want to trace. The larger it is in the picture, the better."
      >
        <MarkList photo={photo} ids={RECTANGLE_MARKS} crosses={crosses} />
        <div className="field-row">
          <LengthField
            label={SIZES[photo.elevation].width}
            value={calibration.widthMm ?? null}
            limits={LIMITS.photoLengthMm}
            testId="rectangle-width"
            onCommit={(widthMm) => change('Type the length of a photo’s rectangle', { widthMm })}
          />
          <LengthField
            label={SIZES[photo.elevation].height}
            value={calibration.heightMm ?? null}
            limits={LIMITS.photoLengthMm}
            testId="rectangle-height"
            onCommit={(heightMm) => change('Type the height of a photo’s rectangle', { heightMm })}
          />
        </div>
        <AngleField
          label="Turned from true"
          value={calibration.turnDeg ?? 0}
          limits={LIMITS.turnDeg}
          hint="Anticlockwise on the drawing; 0 when its sides run level and plumb."
          onCommit={(turnDeg) => change('Turn a photo’s rectangle', { turnDeg })}
        />
      </Step>
      <Step title="Where it lies" about="One of its corners, and where that is on the car.">
        <ChoiceField
          label="The known point is its"
          value={calibration.corner}
          choices={RECTANGLE_MARKS.map((id) => ({ value: id, words: markWords(photo, id) }))}
          testId="known-corner"
          onChange={(corner) => change('Choose the known corner of a photo', { corner })}
        />
        <KnownPlace photo={photo} onPlace={(place) => change('Type where a photo lies', { place })} />
      </Step>
    </>
  )
}

/** What has to be said and put before a photo lies to scale, in the order in which it is done. */
export const PhotoSteps = (props: StepProps): ReactElement => {
  const { photo } = props
  const { calibration } = photo
  return (
    <fieldset className="photo-steps" disabled={photo.locked} aria-label="Lay the photo to scale">
      <ol>
        <FacingStep {...props} />
        <KindStep {...props} />
        {calibration.kind === 'known-length' ? (
          <LengthSteps {...props} calibration={calibration} />
        ) : (
          <RectangleSteps {...props} calibration={calibration} />
        )}
      </ol>
    </fieldset>
  )
}
