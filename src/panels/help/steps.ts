import type { Screen } from '../../state/appState'

/** One step of the job, and the screen it is done on. */
interface Step {
  readonly title: string
  readonly says: string
  readonly screen: Screen
  readonly link: string
  /** With the questions beside the drawing instead of the panels. */
  readonly side?: 'panels' | 'first-layout'
}

/** How a job goes, from the tape to the belts' last day. */
export const STEPS: readonly Step[] = [
  {
    title: 'Measure the car and the person',
    says: 'Answer the questions in the order in which a tape goes round the car. Skip what you do not have; the drawing grows beside it. A photo of the side can lie under the drawing.',
    screen: 'drawing',
    side: 'first-layout',
    link: 'The first questions',
  },
  {
    title: 'Put a photo under it',
    says: 'Set it to scale by a length you know and a level line, or by the corners of a rectangle, and trace tubes on it.',
    screen: 'photo',
    link: 'Photo',
  },
  {
    title: 'Place anchors and read the findings',
    says: 'Drag tabs and bar, or type where they are. Numbers and findings follow at once, rooms, zones and remedies a moment later. Put in everybody who will sit there.',
    screen: 'drawing',
    side: 'panels',
    link: 'Drawing',
  },
  {
    title: 'Compare ways to build it',
    says: 'Keep up to four variants of the car and look at what differs, in numbers and drawn over each other.',
    screen: 'compare',
    link: 'Compare',
  },
  {
    title: 'Agree with the customer',
    says: 'Show the proposal in plain words, take questions pinned to parts, and have it agreed with name and date. It can go out as a link or file and come back.',
    screen: 'customer',
    link: 'Customer',
  },
  {
    title: 'Weld from the papers',
    says: 'Print the mount sheet and the templates at true size. Measure the scale bar first. Tack, check with the tapes on the sheet, then weld.',
    screen: 'papers',
    link: 'Papers',
  },
  {
    title: 'Measure what was welded',
    says: 'Measure the welded anchors in under “As welded”: the same rules run on what is really there. Have it signed.',
    screen: 'drawing',
    side: 'panels',
    link: 'Drawing, panel “As welded”',
  },
  {
    title: 'Look after the belts',
    says: 'Write down each belt’s label under “Belt care”. Inspections, cleaning and the last day of use are kept, with a calendar to be reminded by.',
    screen: 'drawing',
    side: 'panels',
    link: 'Drawing, panel “Belt care”',
  },
  {
    title: 'Keep and hand on',
    says: 'Every layout stays on this device until you put it away. Copy one for a similar car, save it to a file, or share it by link.',
    screen: 'layouts',
    link: 'Layouts',
  },
]
