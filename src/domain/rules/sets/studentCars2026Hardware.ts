import type { PropertyRule } from '../rule'
import { studentDerivativeSource, studentSource } from './studentCarsSource'

const BAR_WHY =
  'The bar takes the pull of both shoulders and must not bend or fold before the belts are done.'
const BAR_CAVEAT =
  'Size B of the tube table, which came through a text conversion: check the row in the printed document. The section alone says nothing about length, bends or welds.'

const BAR: readonly PropertyRule[] = [
  {
    kind: 'property',
    id: 'student-bar-diameter',
    level: 'must',
    source: studentSource('F.6, F.3', null),
    when: {},
    says: 'The shoulder bar is at least 25 mm in outside diameter.',
    why: BAR_WHY,
    caveat: BAR_CAVEAT,
    property: 'bar-diameter',
    family: null,
    min: 25,
    max: null,
    wanted: null,
  },
  {
    kind: 'property',
    id: 'student-bar-wall',
    level: 'must',
    source: studentSource('F.6, F.3', null),
    when: {},
    says: 'The wall of the shoulder bar is at least 1.2 mm thick.',
    why: BAR_WHY,
    caveat: BAR_CAVEAT,
    property: 'bar-wall',
    family: null,
    min: 1.2,
    max: null,
    wanted: null,
  },
  {
    kind: 'property',
    id: 'student-bar-area',
    level: 'must',
    source: studentSource('F.6, F.3', null),
    when: {},
    says: 'The steel section of the shoulder bar has an area of at least 114 mm².',
    why: BAR_WHY,
    caveat: BAR_CAVEAT,
    property: 'bar-area',
    family: null,
    min: 114,
    max: null,
    wanted: null,
  },
  {
    kind: 'property',
    id: 'student-bar-second-moment',
    level: 'must',
    source: studentSource('F.6, F.3', null),
    when: {},
    says: 'The second moment of area of the shoulder bar is at least 8,509 mm⁴.',
    why: BAR_WHY,
    caveat: `The document prints whole mm⁴ and gives 25.4 × 1.6 mm as an example, whose exact value is 8,508.8; so 8,508.5 is taken as the limit here. ${BAR_CAVEAT}`,
    property: 'bar-second-moment',
    family: null,
    // Source of the half: rounding of the printed whole number; π/64·(25.4⁴ − 22.2⁴) = 8 508.8 mm⁴ is the document's own example.
    min: 8508.5,
    max: null,
    wanted: null,
  },
]

const TABS: readonly PropertyRule[] = [
  {
    kind: 'property',
    id: 'student-tab-thickness',
    level: 'must',
    source: studentSource('T.2.4', null),
    when: { mount: 'tab' },
    says: 'Tabs are at least 1.6 mm thick.',
    why: 'A thin tab tears at the hole.',
    caveat:
      'Thickness alone is not strength: the same section asks for 15 kN from one belt and 30 kN from two.',
    property: 'tab-thickness',
    family: null,
    min: 1.6,
    max: null,
    wanted: null,
  },
  {
    kind: 'property',
    id: 'student-double-shear',
    level: 'should',
    source: studentSource('T.2.4', null),
    when: { mount: 'tab' },
    says: 'Double shear is preferred; a single-shear welded tab is welded on both sides of its base.',
    why: 'A bolt held from both sides does not bend.',
    caveat: 'The weld of a single-shear tab is not checked here.',
    property: 'tab-shear',
    family: null,
    min: null,
    max: null,
    wanted: ['double'],
  },
]

const WIDTH_CAVEAT =
  'From the European derivative of these rules, read for its 6-point belts; shown as a recommendation because the 2026 document itself refers to belt standards for it.'
const WIDTH_WHY = 'Narrow webbing loads the body along a line instead of a band.'

const WEBBING: readonly PropertyRule[] = [
  {
    kind: 'property',
    id: 'student-lap-webbing',
    level: 'should',
    source: studentDerivativeSource('T5.1.1', null),
    when: { arrangements: [6] },
    says: 'Lap webbing is at least 50 mm wide.',
    why: WIDTH_WHY,
    caveat: WIDTH_CAVEAT,
    property: 'webbing-width',
    family: 'lap',
    min: 50,
    max: null,
    wanted: null,
  },
  {
    kind: 'property',
    id: 'student-shoulder-webbing',
    level: 'should',
    source: studentDerivativeSource('T5.1.1', null),
    when: { arrangements: [6], headAndNeckRestraint: false },
    says: 'Without a head-and-neck restraint, shoulder webbing is at least 75 mm wide.',
    why: WIDTH_WHY,
    caveat: WIDTH_CAVEAT,
    property: 'webbing-width',
    family: 'shoulder',
    min: 75,
    max: null,
    wanted: null,
  },
  {
    kind: 'property',
    id: 'student-shoulder-webbing-with-restraint',
    level: 'should',
    source: studentDerivativeSource('T5.2.1', 'FIA certified 50 mm wide shoulder'),
    when: { arrangements: [6], headAndNeckRestraint: true },
    says: 'With a head-and-neck restraint, shoulder webbing of 50 mm is allowed where the belt is certified for it.',
    why: 'The narrow strap must stay in the channel of the restraint.',
    caveat: `${WIDTH_CAVEAT} Whether the belt is certified for it the tool cannot know.`,
    property: 'webbing-width',
    family: 'shoulder',
    min: 50,
    max: null,
    wanted: null,
  },
  {
    kind: 'property',
    id: 'student-sub-webbing',
    level: 'should',
    source: studentDerivativeSource('T5.1.1', null),
    when: { arrangements: [6] },
    says: 'Anti-submarine webbing is at least 50 mm wide.',
    why: WIDTH_WHY,
    caveat: WIDTH_CAVEAT,
    property: 'webbing-width',
    family: 'sub',
    min: 50,
    max: null,
    wanted: null,
  },
]

/** Sections, tabs and webbing of the student car rules that can be held against the drawing. */
export const STUDENT_HARDWARE_RULES: readonly PropertyRule[] = [...BAR, ...TABS, ...WEBBING]
