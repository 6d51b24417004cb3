import type { HandleSpot } from '../../src/elevation/handles/handleHit'
import { type Contact, PanePointer, type PanePort } from '../../src/elevation/panePointer'
import type { SharedView } from '../../src/elevation/viewTransform'

const SPOTS: readonly HandleSpot[] = [
  { id: 'tab', at: { xPx: 100, yPx: 100 }, isMovable: true, isMinor: false },
  { id: 'wrap', at: { xPx: 300, yPx: 100 }, isMovable: false, isMinor: false },
]

export const finger = (id: number, timeMs = 0): Contact => ({ id, kind: 'touch', timeMs })
export const pen = (id: number, timeMs = 0): Contact => ({ id, kind: 'pen', timeMs })
export const mouse = (id: number): Contact => ({ id, kind: 'mouse', timeMs: 0 })

/** A page that only writes down what it is told. Frames come when the test says so. */
export const page = (spots: readonly HandleSpot[] = SPOTS) => {
  const log: string[] = []
  let view: SharedView = { pxPerMm: 0.5, originXPx: 0, originYPx: { side: 0, top: 0 } }
  let selected: string | null = null
  let isRunning = false
  let frames: (() => void)[] = []
  const port: PanePort = {
    elevation: 'side',
    spots: () => spots,
    selectedId: () => selected,
    view: () => view,
    sizes: () => ({ side: { widthPx: 800, heightPx: 400 } }),
    setView: (next) => {
      view = next
    },
    select: (id) => {
      selected = id
      log.push(`select ${id}`)
    },
    refuse: (id) => log.push(`refuse ${id}`),
    offer: (ids) => log.push(`offer ${ids.join(' ')}`),
    beginDrag: (id) => {
      isRunning = true
      log.push(`begin ${id}`)
    },
    dragBy: ({ uMm, vMm }) => log.push(`by ${uMm},${vMm}`),
    endDrag: () => {
      isRunning = false
      log.push('end')
    },
    cancelDrag: () => {
      isRunning = false
      log.push('cancel')
    },
    isDragRunning: () => isRunning,
    onNextFrame: (callback) => frames.push(callback),
  }
  return {
    pointer: new PanePointer(port),
    log,
    view: () => view,
    show: (next: SharedView) => {
      view = next
    },
    callOff: () => {
      isRunning = false
    },
    frame: () => {
      const due = frames
      frames = []
      for (const callback of due) callback()
      return due.length
    },
  }
}
