/** What the page asks a worker. The number comes back with every word about it, so that a late one is known for what it is. */
export interface Asked<Question> {
  readonly id: number
  readonly question: Question
}

/** How work on one question goes; all but `progress` are the last words about it. */
export type News<Answer> =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'answer'; readonly answer: Answer }
  /** Something that nobody can mend at the page: no memory, no worker, a mistake of ours. */
  | { readonly kind: 'failed'; readonly message: string }

/** What a worker says. */
export type Said<Answer> = News<Answer> & { readonly id: number }

/** What somebody threw, in words. */
export const failureWords = (error: unknown): string =>
  error instanceof Error ? error.message : String(error)
