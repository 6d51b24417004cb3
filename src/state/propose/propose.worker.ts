import { answerPropose } from './answerPropose'
import type { ProposeAnswer, ProposeQuestion } from './proposeMessages'

const answer = (words: ProposeAnswer): void => self.postMessage(words)

self.addEventListener('message', (event: MessageEvent<ProposeQuestion>) => {
  try {
    answerPropose(event.data, answer)
  } catch (error) {
    answer({ kind: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
})
