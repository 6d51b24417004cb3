/** Told how far a search has got; `done` never falls and reaches `total` at the end. */
export type OnProgress = (done: number, total: number) => void

/** Counts looks against what is planned for each part of a search; a part that ends early jumps to its end. */
export interface Meter {
  /** Begins a part for which so many looks are planned. */
  readonly begin: (planned: number) => void
  readonly look: () => void
  readonly end: () => void
}

/** Looks between two reports. Our judgement: some hundred reports a run, none a second apart even where a look measures much. */
const LOOKS_A_REPORT = 10

/** A meter over parts that together are planned to take `total` looks. */
export const meterOf = (total: number, onProgress: OnProgress): Meter => {
  let done = 0
  let endOfPart = 0
  let told = -1
  const tell = (): void => {
    if (done === told) return
    told = done
    onProgress(done, total)
  }
  tell()
  return {
    begin: (planned) => {
      done = endOfPart
      endOfPart = Math.min(total, endOfPart + planned)
      tell()
    },
    look: () => {
      if (done >= endOfPart) return
      done += 1
      if (done % LOOKS_A_REPORT === 0) tell()
    },
    end: () => {
      done = endOfPart
      tell()
    },
  }
}
