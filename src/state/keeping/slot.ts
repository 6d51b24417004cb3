/** A layout as it is kept in the browser. Every document has a slot of its own, and only one open tab writes into it. */
export interface Slot {
  readonly id: string
  /** The layout file's text; anything else is damage. */
  readonly text: unknown
  /** The job's name when it was kept, for people; may be empty. */
  readonly jobName: string
  /** When it was kept, ms since 1970 by this machine's clock; 0: not known. */
  readonly savedAtMs: number
  /** Another with every write, so that a slot that somebody else wrote into is known. */
  readonly stamp: string
}

/** How a kept layout is filed. Nothing of the layout itself, so that filing touches no slot that another tab writes into. */
export interface Filing {
  /** The name of its folder; empty: in none. A folder is there as long as something is in it. */
  readonly folder: string
  /** When it was put into the bin, ms since 1970; null: it is not there. */
  readonly removedAtMs: number | null
}

export const UNFILED: Filing = { folder: '', removedAtMs: null }

/** Where layouts are kept between visits; the browser's own in the app, plain objects in tests. Any of these may fail. */
export interface SlotStorage {
  readonly all: () => Promise<readonly Slot[]>
  /**
   * Writes a slot if nothing lies there or what lies there still bears the stamp `over` (null: only if nothing does), in one step
   * that nobody can come between; `overtaken` and nothing written otherwise.
   */
  readonly write: (slot: Slot, over: string | null) => Promise<'written' | 'overtaken'>
  /** Removes a slot for good with all that is known about it. */
  readonly remove: (id: string) => Promise<void>
  /** Of slots that were ever filed. */
  readonly filings: () => Promise<ReadonlyMap<string, Filing>>
  readonly file: (id: string, change: Partial<Filing>) => Promise<void>
  /** The file on the disk that a document was opened from or saved to, as the browser handed it out; undefined: none. */
  readonly fileLink: (id: string) => Promise<unknown>
  readonly keepFileLink: (id: string, link: unknown) => Promise<void>
  /** Keeps what could not be read where no later write touches it. */
  readonly setAside: (value: unknown) => Promise<void>
  readonly readSetAside: () => Promise<unknown>
}

/** What a page can find out about itself among the tabs of one browser. */
export interface TabFacts {
  /** The slot this tab wrote into before the page was loaded anew; null in a new tab. */
  readonly lastSlotId: () => string | null
  readonly rememberSlotId: (id: string) => void
  /**
   * Takes a slot for as long as the page is open. `taken`: another open tab has it; `unknown`: the browser cannot tell, and it
   * must be taken for somebody else's.
   */
  readonly claim: (id: string) => Promise<'mine' | 'taken' | 'unknown'>
  /** Lets go of a slot, so that another tab may take it. */
  readonly release: (id: string) => void
  /** The slots that open tabs have taken, this one's too, as far as the browser can tell. */
  readonly claimed: () => Promise<ReadonlySet<string>>
  /** Up to when the kept layouts are that somebody was told of, ms since 1970. */
  readonly toldUpToMs: () => number
  readonly rememberTold: (upToMs: number) => void
  /** Never the same twice, in any tab. */
  readonly freshId: () => string
  readonly nowMs: () => number
}
