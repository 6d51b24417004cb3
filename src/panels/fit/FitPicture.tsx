import { memo, useMemo, type ReactElement } from 'react'
import type { Occupant, Sex } from '../../domain/body/occupant'
import type { Layout } from '../../domain/layout/document/layout'
import { beyondSurvey } from '../../domain/layout/fit/beyondSurvey'
import type { Outcome } from '../../domain/layout/fit/personVerdicts'
import type { Fit, WhoFits } from '../../domain/layout/fit/whoFits'
import {
  marksPath,
  markPath,
  PICTURE,
  pictureScales,
  type MarkShape,
  type PictureScales,
} from './pictureScale'

const SHAPES: Readonly<Record<Outcome, MarkShape>> = {
  passing: 'ring',
  unchecked: 'triangle',
  broken: 'cross',
}

const OUTCOMES: readonly Outcome[] = ['passing', 'unchecked', 'broken']

const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  passing: 'passes',
  broken: 'breaks a limit',
  unchecked: 'could not be checked',
}

const Axes = (props: { readonly scales: PictureScales; readonly units: Layout['units'] }): ReactElement => {
  const { scales, units } = props
  const bottom = PICTURE.height - PICTURE.bottom
  const right = PICTURE.width - PICTURE.right
  return (
    <>
      {scales.x.ticks.map(({ at, words }) => (
        <g key={words}>
          <line className="fit-grid" x1={at} x2={at} y1={PICTURE.top} y2={bottom} />
          <text x={at} y={bottom + 14} textAnchor="middle">
            {words}
          </text>
        </g>
      ))}
      {scales.y.ticks.map(({ at, words }) => (
        <g key={words}>
          <line className="fit-grid" x1={PICTURE.left} x2={right} y1={at} y2={at} />
          <text x={PICTURE.left - 4} y={at + 4} textAnchor="end">
            {words}
          </text>
        </g>
      ))}
      <text x={(PICTURE.left + right) / 2} y={PICTURE.height - 6} textAnchor="middle">
        stature, {units.length}
      </text>
      <text transform={`translate(11 ${(PICTURE.top + bottom) / 2}) rotate(-90)`} textAnchor="middle">
        mass, {units.mass}
      </text>
    </>
  )
}

const SEX_WORDS: Readonly<Record<Sex, string>> = { female: 'women', male: 'men' }

/** All of one sex by stature and mass, each with the mark of how they stand, and the occupants of this place. */
const SexPicture = (props: {
  readonly sex: Sex
  readonly fit: Fit
  readonly people: WhoFits['people']
  readonly occupants: readonly Occupant[]
  readonly scales: PictureScales
  readonly units: Layout['units']
}): ReactElement => {
  const { sex, fit, people, occupants, scales, units } = props
  const { passing, broken, unchecked } = fit.tally[sex]
  const own = occupants.filter((occupant) => occupant.sex === sex)
  const paths = useMemo(
    () =>
      // The fewest are drawn last, so that the many do not hide them.
      OUTCOMES.toSorted((a, b) => fit.tally[sex][b] - fit.tally[sex][a]).map((outcome) => ({
        outcome,
        path: marksPath(
          SHAPES[outcome],
          people.filter((person, index) => person.sex === sex && fit.outcomes[index] === outcome),
          scales,
        ),
      })),
    [people, fit, sex, scales],
  )
  return (
    <figure className="fit-figure">
      <figcaption>
        {SEX_WORDS[sex]}: {passing} pass, {broken} break a limit
        {unchecked > 0 ? `, ${unchecked} could not be checked` : ''}
      </figcaption>
      <svg
        viewBox={`0 0 ${PICTURE.width} ${PICTURE.height}`}
        role="img"
        aria-label={`Surveyed ${SEX_WORDS[sex]} by stature and mass: ${passing} pass, ${broken} break a limit, ${unchecked} could not be checked`}
        data-testid={`fit-picture:${sex}`}
      >
        <Axes scales={scales} units={units} />
        {paths.map(({ outcome, path }) => (
          <path key={outcome} className="fit-mark" data-outcome={outcome} d={path} />
        ))}
        {own.map(({ id, statureMm, massKg }) => (
          <g key={id}>
            <path className="fit-own" d={markPath('diamond', scales.x.at(statureMm), scales.y.at(massKg))} />
            {beyondSurvey({ sex, statureMm, massKg }, people).length === 0 ? null : (
              <text
                className="fit-beyond"
                textAnchor="middle"
                x={scales.x.at(statureMm)}
                y={scales.y.at(massKg) - 9}
              >
                !
              </text>
            )}
          </g>
        ))}
      </svg>
    </figure>
  )
}

const LegendMark = (props: {
  readonly shape: MarkShape
  readonly outcome: Outcome | null
  readonly words: string
}): ReactElement => (
  <li>
    <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      <path
        className={props.outcome === null ? 'fit-own' : 'fit-mark'}
        data-outcome={props.outcome ?? undefined}
        d={markPath(props.shape, 8, 8)}
      />
    </svg>
    {props.words}
  </li>
)

/** Who passes and who does not, by stature and mass; shape tells what colour tells. */
export const FitPicture = memo(function FitPicture(props: {
  readonly fit: Fit
  readonly people: WhoFits['people']
  readonly occupants: readonly Occupant[]
  readonly units: Layout['units']
}): ReactElement {
  const { fit, people, occupants, units } = props
  const scales = useMemo(() => pictureScales([...people, ...occupants], units), [people, occupants, units])
  return (
    <div className="fit-pictures">
      <ul className="fit-legend">
        {OUTCOMES.map((outcome) => (
          <LegendMark
            key={outcome}
            shape={SHAPES[outcome]}
            outcome={outcome}
            words={OUTCOME_WORDS[outcome]}
          />
        ))}
        <LegendMark shape="diamond" outcome={null} words="sits at this place; with ! beyond the survey" />
      </ul>
      {(['female', 'male'] as const).map((sex) => (
        <SexPicture
          key={sex}
          sex={sex}
          fit={fit}
          people={people}
          occupants={occupants}
          scales={scales}
          units={units}
        />
      ))}
    </div>
  )
})
