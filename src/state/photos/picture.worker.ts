import { type Asked, failureWords, type Said } from '../worker/workerMessages'
import type { PictureAnswer, PictureQuestion } from './pictureMessages'
import { pictureWork } from './pictureWork'

const say = (said: Said<PictureAnswer>, transfer: readonly Transferable[] = []): void =>
  self.postMessage(said, { transfer: [...transfer] })

const answer = async ({ id, question }: Asked<PictureQuestion>): Promise<void> => {
  try {
    const found = await pictureWork(question)
    // Handed over, not copied: a large picture has tens of megabytes.
    say({ kind: 'answer', id, answer: found }, found.kind === 'laid' ? found.levels : [])
  } catch (error) {
    say({ kind: 'failed', id, message: failureWords(error) })
  }
}

self.addEventListener('message', ({ data }: MessageEvent<Asked<PictureQuestion>>) => void answer(data))
