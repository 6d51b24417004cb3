/** Changes part of one thing as one undo step; `words` name that part, as in "the recline". */
export type Change<Thing> = (words: string, change: Partial<Thing>) => void
