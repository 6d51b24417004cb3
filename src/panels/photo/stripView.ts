import { createStore } from 'zustand/vanilla'

/** Whether the controls of photos and tracing stand over the drawing. */
export const stripView = createStore<{ readonly isOpen: boolean }>(() => ({ isOpen: false }))
