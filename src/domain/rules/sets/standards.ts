import type { RuleSet, RuleSource, SourceStatus } from '../rule'
import { statedRule } from './making'
import { REASON } from './reasons'

const sfi = (phrase: string | null): RuleSource => ({
  document: 'SFI Foundation presentation on 16.1, 16.2, 16.5 and 16.6',
  section: 'webbing',
  edition: 'edition not recorded',
  status: 'read',
  phrase,
})

/** What belts themselves are held to. Source: an SFI Foundation presentation, and FIA 8853/98 as a team's page and a club's list give it. */
export const BELT_STANDARDS: RuleSet = {
  id: 'belt-standards',
  name: 'Belt standards, SFI and FIA',
  edition: 'as presented and quoted',
  group: 'Rally and circuit',
  about: 'Life and strength of the webbing, not where it is mounted. Nothing is checked.',
  rules: [
    statedRule({
      id: 'sfi-two-years',
      orders: 'must',
      source: sfi('shall not exceed two years'),
      says: 'Webbing is used for two years at most; only its original maker renews it.',
      why: REASON.age,
      caveat: 'Others allow 4 years (USAC 2009) or 5 (FIA label, NZ Speedway 2010, a marque club).',
    }),
    statedRule({
      id: 'sfi-webbing-strength',
      orders: 'must',
      source: sfi('6300lbs'),
      says: 'Lap and shoulder webbing to SFI 16.1 breaks at 6,300 lbf (28.0 kN) or more.',
      why: REASON.strength,
      caveat: 'Strength is tested, not drawn; the tool does not check it.',
    }),
    statedRule({
      id: 'fia-label-year',
      orders: 'must',
      source: {
        document: 'FIA standard 8853/98',
        section: 'label',
        edition: '1998',
        status: 'second-hand',
        phrase: null,
      },
      says: 'A belt is valid to the year on its label, 5 years.',
      why: REASON.age,
    }),
    statedRule({
      id: 'fia-webbing-strength',
      orders: 'must',
      source: {
        document: 'FIA standard 8853/98',
        section: 'strap strength',
        edition: '1998',
        status: 'second-hand',
        phrase: null,
      },
      says: 'Shoulder and lap straps break at 2,450 daN or more, crotch straps at 1,130 daN.',
      why: REASON.strength,
      caveat: 'Strength is tested, not drawn; the tool does not check it.',
    }),
  ],
}

const queensland = (): RuleSource => ({
  document: 'Queensland code of practice, light vehicles, "Seats and Seat Belts"',
  section: 'seat anchorages',
  edition: 'edition not recorded',
  status: 'read',
  phrase: null,
})

const ukYearBook = (): RuleSource => ({
  document: 'UK national year book',
  section: 'K2.2',
  edition: 'edition not recorded',
  status: 'second-hand',
  phrase: null,
})

/** The seat has to hold where belts pass through it. Source: the Queensland code of practice, and a UK year book as quoted. */
export const SEAT_MOUNT_RULES: RuleSet = {
  id: 'seat-mounts',
  name: 'Seat mounts, UK and Queensland',
  edition: 'editions not recorded',
  group: 'Road vehicles',
  about: 'How the seat itself is held; belts that pass through it pull on it. Nothing is checked.',
  rules: [
    statedRule({
      id: 'seat-mounts-uk-load',
      orders: 'must',
      source: ukYearBook(),
      says: 'Each mounting point of the seat holds 15,000 N in any direction and bears on 40 cm².',
      why: 'A seat that comes loose takes the slots of the belt with it.',
      caveat: 'Strength is not checked here.',
    }),
    statedRule({
      id: 'seat-mounts-queensland-plate',
      orders: 'must',
      source: queensland(),
      says: 'Backing plates of seat anchorages are 3 mm thick and 3,750 mm² (75 × 50 mm) at least, corners rounded to 5 mm or more, with four 8 mm bolts of grade 10.9.',
      why: 'A seat that comes loose takes the slots of the belt with it.',
    }),
  ],
}

const machine = (document: string, section: string, status: SourceStatus): RuleSource => ({
  document,
  section,
  edition: 'edition not recorded',
  status,
  phrase: null,
})

/** Tractors and earth movers. Source: ISO 3776-2 and the OECD tractor codes, from memory; of ISO 6683 only the scope was read. */
export const WORK_MACHINE_RULES: RuleSet = {
  id: 'work-machines',
  name: 'Tractors and earth movers, ISO 3776-2 and 6683',
  edition: 'editions not recorded',
  group: 'Road vehicles',
  about: 'Test loads from memory; the angles of these standards could not be read. Nothing is checked.',
  rules: [
    statedRule({
      id: 'work-machines-tractor-load',
      orders: 'must',
      source: machine('ISO 3776-2', 'static pull', 'memory'),
      says: 'A tractor’s lap belt anchorage holds 4,450 N forward at 45° and 2,225 N rearward, and the seat’s own mass besides.',
      why: REASON.strength,
      caveat: 'Strength is not checked here.',
    }),
    statedRule({
      id: 'work-machines-scope',
      orders: 'advice',
      source: machine('ISO 6683:2005', 'scope', 'read'),
      says: 'Earth movers with a roll-over structure have lap belts to ISO 6683.',
      why: REASON.strength,
      caveat: 'Only the scope was read; its loads and its zone for the angle were not found.',
    }),
  ],
}
