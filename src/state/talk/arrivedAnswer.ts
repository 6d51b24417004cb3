import { createStore } from 'zustand/vanilla'
import type { Answer } from '../../domain/layout/agreement/answer'

/** An answer that was opened and is not taken or put aside yet; null: none. Part of no layout. */
export const arrivedAnswer = createStore<{ readonly answer: Answer | null }>(() => ({ answer: null }))

export const putAside = (): void => arrivedAnswer.setState({ answer: null })
