import { COUNTS } from './limits'
import { group, id, list, point, text } from './schemaParts'

/** The description of the places on the car that the builder named for the tape. */
export const tapePoints = list(
  group(
    {
      id: id('id'),
      name: text('name', 'In words a welder can find it by.'),
      point: point('point', 'Where the tape is held, from the datum.'),
    },
    'tape point',
    'A seat bolt, a punch mark, a tube crossing.',
  ),
  COUNTS.tapePoints,
  'tape points',
  'Places that a tape can be held to, beside the datum and marks on tubes; left out when there are none.',
)
