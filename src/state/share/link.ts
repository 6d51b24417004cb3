import type { Layout } from '../../domain/layout/document/layout'
import { layoutText } from '../../domain/layout/document/layoutText'
import { withoutPhotos } from '../../domain/layout/edit/changePhotos'
import { fragmentOf, type Carried } from './fragment'

/** The address of this app with the text in the part that no server sees. `here` is the address of the page. */
export const linkTo = (here: string, carried: Carried): string => new URL(fragmentOf(carried), here).href

/** What of a layout travels in a link: everything but its photos, whose pixels stay on the device. */
export const linkedText = (layout: Layout): string => layoutText(withoutPhotos(layout))

/** Nobody else can open an address of this machine alone. */
export const isOnlyThisMachine = (here: string): boolean => {
  const { hostname, protocol } = new URL(here)
  return (
    protocol === 'file:' || hostname === 'localhost' || hostname === '[::1]' || hostname.startsWith('127.')
  )
}

/**
 * Characters up to which mail and messengers take a link whole, as far as we know: many programs cut at about 2000, others at several
 * times that. From memory of common limits; no source.
 */
export const SAFE_LINK_CHARACTERS = 2000
