import { browserSlots } from './browserSlots'
import { browserTab } from './browserTab'
import { createKeeping } from './keeping'

/** The page's one way of keeping its layout. */
export const pageKeeping = createKeeping(browserSlots(), browserTab())

/** Has the browser ask before it closes a page with something that it could not keep. */
export const warnBeforeLosing = (): void =>
  window.addEventListener('beforeunload', (event) => {
    if (pageKeeping.hasUnkept()) event.preventDefault()
  })
