import type { RuleSet, RuleSource } from '../rule'
import { limitRule, propertyRule, statedRule } from './making'
import { REASON } from './reasons'

const nhra = (): RuleSource => ({
  document: 'NHRA rule book',
  section: 'harness figure',
  edition: 'edition not recorded',
  status: 'memory',
  phrase: null,
})

/** Source: the harness figure of the NHRA rule book, from memory. */
export const DRAG_NHRA_RULES: RuleSet = {
  id: 'drag-nhra',
  name: 'Drag racing (NHRA figure)',
  edition: 'edition not recorded',
  group: 'Drag racing',
  about: 'One figure, from memory; a general page repeats its number without naming a document.',
  rules: [
    limitRule({
      id: 'nhra-shoulder-height',
      orders: 'must',
      source: nhra(),
      says: 'The shoulder anchors are 0 in to 4 in (0 mm to 101.6 mm) below the top of the shoulder.',
      why: REASON.shoulderHeight,
      caveat:
        'A height, not an angle: looser than 10° for a long strap, tighter for a short one; they meet at 576 mm.',
      quantity: 'shoulder-height',
      family: 'shoulder',
      min: 0,
      max: 101.6,
    }),
    statedRule({
      id: 'nhra-seat-front',
      orders: 'advice',
      source: { ...nhra(), section: '10:5, an older edition', status: 'second-hand' },
      says: 'With an original-type seat the crotch strap may go in front of the seat.',
      why: REASON.sub,
      caveat: 'Quoted in an owners’ forum. New Jersey forbids just that.',
    }),
  ],
}

const ihra = (section: string): RuleSource => ({
  document: 'IHRA rule book',
  section,
  edition: '2019',
  status: 'read',
  phrase: null,
})

/** Source: IHRA rule book 2019, pp. 44 and 47. */
export const DRAG_IHRA_2019_RULES: RuleSet = {
  id: 'drag-ihra-2019',
  name: 'Drag racing, IHRA 2019',
  edition: '2019',
  group: 'Drag racing',
  about: 'Two pages of a drag racing rule book.',
  rules: [
    propertyRule({
      id: 'ihra-no-lower-rail',
      orders: 'must',
      source: ihra('harness mounting'),
      when: { mount: 'wrap' },
      says: 'Belts are not wrapped round lower frame rails.',
      why: 'A lower rail scrapes the ground and cuts the webbing.',
      caveat: 'Tubes marked as floor tubes stand for lower frame rails here.',
      property: 'wrap-tube-role',
      wanted: ['harness-bar', 'cage'],
    }),
    statedRule({
      id: 'ihra-webbing-hole',
      orders: 'must',
      source: ihra('harness mounting'),
      says: 'No bolt goes through webbing; mounts are on the frame, a cross-member or a reinforced mount and limit travel up and forward.',
      why: REASON.strength,
    }),
    statedRule({
      id: 'ihra-seat-front',
      orders: 'advice',
      source: ihra('crotch strap'),
      says: 'With an original-type seat the crotch strap may go in front of the seat.',
      why: REASON.sub,
      caveat: 'New Jersey forbids just that.',
    }),
    statedRule({
      id: 'ihra-one-release',
      orders: 'must',
      source: ihra('release'),
      says: 'One release frees everything, arm restraints included.',
      why: 'Rescuers and the wearer have seconds.',
    }),
    statedRule({
      id: 'ihra-matched',
      orders: 'must',
      source: ihra('parts'),
      says: 'All parts of a belt are of one system and one maker, unmodified.',
      why: 'Mixed parts were never tested together.',
    }),
    statedRule({
      id: 'ihra-age',
      orders: 'must',
      source: ihra('webbing'),
      says: 'Where SFI 16.1 is required, belts are renewed every 2 years.',
      why: REASON.age,
    }),
  ],
}

const newJersey = (section: string): RuleSource => ({
  document: 'New Jersey Administrative Code',
  section,
  edition: 'current to September 2024',
  status: 'read',
  phrase: null,
})

/** Race tracks in New Jersey. Source: N.J. Adm. Code 13:62-3.7. */
export const NEW_JERSEY_RULES: RuleSet = {
  id: 'new-jersey-13-62',
  name: 'New Jersey race tracks, 13:62-3.7',
  edition: 'current to September 2024',
  group: 'State law',
  about: 'A state law for race tracks.',
  rules: [
    propertyRule({
      id: 'new-jersey-points',
      orders: 'must',
      source: newJersey('13:62-3.7(c)'),
      says: 'Everybody in a racing car has a belt with at least 5 points.',
      why: REASON.points,
      property: 'belt-points',
      min: 5,
    }),
    statedRule({
      id: 'new-jersey-seat-front',
      orders: 'must',
      source: newJersey('13:62-3.7(f)'),
      says: 'The crotch strap does not go round the front of the seat.',
      why: REASON.sub,
    }),
    statedRule({
      id: 'new-jersey-head-restraint',
      orders: 'must',
      source: newJersey('13:62-3.7(e)'),
      says: 'No harness on a seat whose head restraint has no openings for the straps.',
      why: 'Straps round the outside of a head restraint slip off the shoulders.',
    }),
  ],
}
