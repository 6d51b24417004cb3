import { ERROR_SPREADS } from '../../rules/tolerance'
import { LIMITS } from './limits'
import { choice, group, limitedNumber } from './schemaParts'

const weldErrorMm = (axis: string) => limitedNumber(LIMITS.weldErrorMm, axis, 'Plus or minus; 0 is no error.')

/** The description of what welding and measuring may be off by. */
export const tolerance = group(
  {
    xMm: weldErrorMm('x'),
    yMm: weldErrorMm('y'),
    zMm: weldErrorMm('z'),
    tabDeg: limitedNumber(
      LIMITS.angleErrorDeg,
      'tab angle',
      'Plus or minus, of the turn in plan and of the lean.',
    ),
    reclineDeg: limitedNumber(LIMITS.angleErrorDeg, 'recline reading', 'Plus or minus.'),
    spread: choice(
      ERROR_SPREADS,
      'spread',
      'worst-case: only the worst is looked for. even: any error within the ± is as likely as any other. mostly-small: normal, standard deviation half of the ±, cut off at the ±.',
    ),
  },
  'weld and measuring error',
  'What every anchor may be off by once it is welded; left out while nobody has typed it.',
)
