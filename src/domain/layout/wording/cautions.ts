/** Printed on every output and always in view. Source of the content: our own limits; no document decides them. */
export const CAUTIONS: readonly string[] = [
  'This is not a certificate and not a crash prediction: it is geometry and simple mechanics of what was drawn.',
  'The event’s rule book, the belt maker’s instructions and local law decide; where they differ from this page, they win.',
  'A licensed builder or engineer decides whether tabs, bars, welds and seat are strong enough; nothing here checks strength.',
  'Sources disagree: look at which rule set was used and whether each figure was read, quoted second-hand or from memory.',
  'A layout that suits a small and a large body does not suit everyone between them: check the people who will sit there.',
  'Measure again on the car, with the real person in the real seat, before anything is welded.',
]
