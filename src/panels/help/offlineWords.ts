import type { Offline, OfflineState } from '../../state/offline/offline'
import type { Installing } from '../../state/offline/installing'

/** In a word: does it work without a network? */
export const OFFLINE_ANSWER: Readonly<Record<Offline, string>> = {
  checking: 'looking …',
  'not-yet': 'not yet',
  kept: 'yes',
  'not-built': 'not here',
  'not-secure': 'not at this address',
  'not-supported': 'not in this browser',
  refused: 'not in this browser',
}

/** The same in a sentence or two. */
export const OFFLINE_WORDS: Readonly<Record<Offline, string>> = {
  checking: 'Tabwright is looking whether all of it is kept on this device.',
  'not-yet':
    'Not all of Tabwright is kept on this device yet. Leave the page open for a moment while there is a network; what you do meanwhile is not disturbed.',
  kept: 'Every file of this version is kept on this device and was counted when the page was opened. Drawing, checking, papers, examples and this guide all work with the network gone. A browser that runs out of room may throw kept files away; the answer here then says so.',
  'not-built':
    'This page is served from its source for people who change Tabwright, and nothing is kept. What “npm start” serves is kept.',
  'not-secure':
    'Browsers keep an app only from an address that begins with https, or from the device itself (localhost). Here Tabwright works as long as the page stays open; layouts are kept all the same.',
  'not-supported':
    'This browser keeps no apps for use without a network; private windows often do not. Tabwright works as long as the page stays open.',
  refused:
    'This browser did not let Tabwright keep itself; its settings or a private window may forbid it. Tabwright works as long as the page stays open.',
}

export const INSTALL_WORDS: Readonly<Record<Installing, string>> = {
  offered: 'This browser can put Tabwright beside the other apps of the device, with a window of its own.',
  installed: 'Tabwright runs as an app of its own on this device.',
  'by-hand':
    'To have Tabwright beside the other apps of the device, look in the browser’s own menu for “Install” or “Add to home screen”; on some tablets it is in the Share menu. Not every browser has it, and Tabwright works the same without.',
}

export const versionWords = ({ version }: Pick<OfflineState, 'version'>): string =>
  version ?? 'served from source'
