import { statedRule } from './making'
import { REASON } from './reasons'
import { studentDerivativeSource } from './studentCarsSource'

/** What the European derivative of the student rules says and the tool cannot check. */
export const DERIVATIVE_STATED = [
  statedRule({
    id: 'student-derivative-firewall',
    orders: 'must',
    source: studentDerivativeSource('T5.3.2', null),
    says: 'All belt attachments are on the driver’s side of the firewall.',
    why: 'Fire must not reach the straps.',
  }),
  statedRule({
    id: 'student-derivative-braces',
    orders: 'must',
    source: studentDerivativeSource('T5.5.1', null),
    says: 'Shoulder straps are not mounted on the braces of the main hoop without extra bracing.',
    why: REASON.strength,
  }),
  statedRule({
    id: 'student-derivative-loads',
    orders: 'must',
    source: studentDerivativeSource('attachment loads, section number not recorded', null),
    says: 'Shoulder and lap attachments hold 13 kN, anti-submarine ones 6.5 kN, shared ones or those less than 100 mm apart 19.5 kN.',
    why: REASON.strength,
    caveat: 'Strength is not checked here. The 2026 student car rules ask for 15 kN and 30 kN.',
  }),
  statedRule({
    id: 'student-derivative-age',
    orders: 'must',
    source: studentDerivativeSource('T5.2.2', null),
    says: 'Belts are replaced after 31 December of the second year after manufacture (SFI) or of the year on the label (FIA).',
    why: REASON.age,
  }),
  statedRule({
    id: 'student-derivative-lap-position',
    orders: 'should',
    source: studentDerivativeSource('T5.4', null),
    says: 'At the bottom of the seat the lap strap lies 0 mm to 76 mm (3 in) forward of where back and bottom meet.',
    why: REASON.lapLow,
    caveat: 'The tool does not know where they meet under the person.',
  }),
  statedRule({
    id: 'student-derivative-brackets',
    orders: 'must',
    source: studentDerivativeSource('brackets, section number not recorded', null),
    says: 'A bracket is held by at least two M8 bolts of class 8.8.',
    why: REASON.strength,
  }),
  statedRule({
    id: 'student-derivative-bent-bar',
    orders: 'must',
    source: studentDerivativeSource('shoulder bar, section number not recorded', null),
    says: 'A bent shoulder bar without braces is proved by analysis: 7 kN on each attachment over the whole range of angles, with the yield of the metal as welded, and buckling.',
    why: REASON.strength,
    caveat: 'Strength is not checked here.',
  }),
  statedRule({
    id: 'student-derivative-one-release',
    orders: 'should',
    source: studentDerivativeSource('release, section number not recorded', null),
    says: 'One release frees every strap, arm restraints included; a latch lever has a cover.',
    why: 'Rescuers and the wearer have seconds.',
  }),
  statedRule({
    id: 'student-derivative-belt-standard',
    orders: 'must',
    source: studentDerivativeSource('T5.2.1', null),
    says: 'A belt to FIA 8853-2016 is accepted; narrower shoulder straps only with a head-and-neck restraint.',
    why: 'A narrow strap must stay in the channel of the restraint.',
  }),
]
