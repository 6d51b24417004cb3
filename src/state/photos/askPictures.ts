import { createWorkerRunner, type OpenWorker } from '../worker/workerRunner'
import type { PictureAnswer, PictureQuestion } from './pictureMessages'

/** Has one thing done to a picture; rejects with what went wrong, in words. */
export type AskPictures = (question: PictureQuestion) => Promise<PictureAnswer>

/** Each question has a worker of its own, which goes with all its memory when it has answered. */
export const askPictures =
  (open: OpenWorker<PictureQuestion, PictureAnswer>): AskPictures =>
  (question) =>
    new Promise((resolve, reject) => {
      createWorkerRunner(open, (_, news) => {
        if (news.kind === 'answer') resolve(news.answer)
        else if (news.kind === 'failed') reject(new Error(news.message))
      }).start(question)
    })
