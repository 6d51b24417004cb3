import { browserSlots } from './browserSlots'
import { browserTab } from './browserTab'
import { createKeeping } from './keeping'

/** The page's one way of keeping its layout. */
export const pageKeeping = createKeeping(browserSlots(), browserTab())
