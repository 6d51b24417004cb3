import { answerFit } from './answerFit'
import type { FitAnswer, FitQuestion } from './fitMessages'

const answer = (words: FitAnswer): void => self.postMessage(words)

self.addEventListener('message', (event: MessageEvent<FitQuestion>) => {
  try {
    answerFit(event.data, answer)
  } catch (error) {
    answer({ kind: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
})
