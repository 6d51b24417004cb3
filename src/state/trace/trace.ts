import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Elevation, PlanePointMm } from '../../domain/geometry/plane'
import { projected } from '../../domain/geometry/plane'
import type { PointMm } from '../../domain/geometry/point'
import type { Layout } from '../../domain/layout/document/layout'
import { withTapePoint } from '../../domain/layout/edit/changeTapePoints'
import { STARTING_SECTION } from '../../domain/layout/edit/changeTubes'
import { handleById } from '../../domain/layout/edit/handles'
import { movedHandle } from '../../domain/layout/edit/move'
import {
  addTracedTube,
  type TracedTube,
  tracedPoint,
  withTracedPoint,
} from '../../domain/layout/edit/traceTube'
import { nudgeMm } from '../nudge'
import type { AppStore } from '../store'

/** What the next tap on an elevation places: a bend of a tube that is being traced, or one part. */
export type Trace =
  | { readonly kind: 'off' }
  | ({
      readonly kind: 'tube'
      readonly elevation: Elevation
      /** The coordinate that the elevation does not show, of the points to come: y in the side, z in the top elevation. */
      readonly acrossMm: number
    } & TracedTube)
  | { readonly kind: 'point'; readonly targetId: string }

/** What can be put where somebody taps. */
export interface PointTarget {
  readonly id: string
  readonly name: string
}

const TAPE_PREFIX = 'tape-point:'
const OFF: Trace = { kind: 'off' }

/** The name of a target and the layout with it put at a place of an elevation; null when it is not there any more. */
const putAt = (layout: Layout, targetId: string, elevation: Elevation, at: PlanePointMm) => {
  const stepMm = nudgeMm(layout.units.length, 'small')
  const put = tracedPoint(elevation, at, 0, stepMm)
  const { xMm, yMm, zMm } = put
  const asked: Partial<PointMm> = elevation === 'side' ? { xMm, zMm } : { xMm, yMm }
  const handle = handleById(layout, targetId)
  if (handle !== null)
    return { name: handle.name, change: (before: Layout) => movedHandle(before, handle.ref, asked) }
  const tape = layout.tapePoints?.find(({ id }) => `${TAPE_PREFIX}${id}` === targetId)
  if (tape === undefined) return null
  const point = { ...tape.point, ...asked }
  return {
    name: tape.name.trim() === '' ? `Tape point ${tape.id}` : tape.name,
    change: (before: Layout) => withTapePoint(before, tape.id, { point }),
  }
}

/** The id under which a tape point can be put; handles go by their own ids. */
export const tapeTargetId = (tapePointId: string): string => `${TAPE_PREFIX}${tapePointId}`

/** Tracing on the drawing: begun, fed with taps, finished or called off. Nothing is in the layout until it is finished. */
export interface Tracing {
  readonly state: Pick<StoreApi<Trace>, 'getState' | 'getInitialState' | 'subscribe'>
  readonly startTube: (store: AppStore, elevation: Elevation) => void
  readonly startPoint: (store: AppStore, targetId: string) => void
  /** Changes what is traced with; a tube's across holds for the points to come. */
  readonly change: (
    patch: Partial<Omit<Extract<Trace, { kind: 'tube' }>, 'kind' | 'points' | 'elevation'>>,
  ) => void
  readonly tap: (store: AppStore, elevation: Elevation, at: PlanePointMm) => void
  readonly removeLast: () => void
  /** One undo step; nothing while the tube has fewer than two points. */
  readonly finish: (store: AppStore) => void
  readonly callOff: () => void
}

/** A tube begins with the section of the last one of the layout: cages are mostly of one tube. */
const startingTube = ({ tubes }: Layout): Omit<TracedTube, 'points'> => {
  const { outsideDiameterMm, wallMm } = tubes.at(-1) ?? STARTING_SECTION
  return { role: 'cage', outsideDiameterMm, wallMm }
}

/** Where a tube is first taken to lie: in the middle of the car; from above, at the hip point's height. Starting values, typed over. */
const startingAcross = (layout: Layout, elevation: Elevation): number => {
  const hip = layout.places[0]?.seat.hipPoint
  if (hip === undefined) return 0
  return elevation === 'side' ? 0 : hip.zMm
}

/** Calls back once another document is open; the same one moved to another slot keeps its history. Gives the way to stop. */
const onceLeft = ({ state }: AppStore, leave: () => void): (() => void) => {
  const stop = state.subscribe((now, before) => {
    if (now.documentId === before.documentId || now.history === before.history) return
    stop()
    leave()
  })
  return stop
}

export const createTracing = (): Tracing => {
  const state = createStore<Trace>(() => OFF)
  let stopFollowing = (): void => undefined
  /** What is traced belongs to the document that is open, and goes when another one is opened. */
  const begin = (store: AppStore, trace: Trace): void => {
    stopFollowing()
    stopFollowing = onceLeft(store, () => {
      if (state.getState().kind === 'off') return
      state.setState(OFF, true)
      store.actions.notify('info', 'Tracing was called off: another layout is open.')
    })
    state.setState(trace, true)
  }
  const tapPoint = (store: AppStore, targetId: string, elevation: Elevation, at: PlanePointMm): void => {
    const put = putAt(store.state.getState().layout, targetId, elevation, at)
    if (put !== null) store.actions.edit(`Set ${put.name}`, put.change)
    state.setState(OFF, true)
  }
  return {
    state,
    startTube: (store, elevation) => {
      const { layout } = store.state.getState()
      const acrossMm = startingAcross(layout, elevation)
      begin(store, { kind: 'tube', elevation, acrossMm, points: [], ...startingTube(layout) })
    },
    startPoint: (store, targetId) => begin(store, { kind: 'point', targetId }),
    change: (patch) => {
      const now = state.getState()
      if (now.kind === 'tube') state.setState({ ...now, ...patch }, true)
    },
    tap: (store, elevation, at) => {
      const now = state.getState()
      if (now.kind === 'point') return tapPoint(store, now.targetId, elevation, at)
      if (now.kind !== 'tube' || now.elevation !== elevation) return
      const stepMm = nudgeMm(store.state.getState().layout.units.length, 'small')
      const point = tracedPoint(elevation, at, now.acrossMm, stepMm)
      state.setState({ ...now, points: withTracedPoint(now.points, point) }, true)
    },
    removeLast: () => {
      const now = state.getState()
      if (now.kind === 'tube') state.setState({ ...now, points: now.points.slice(0, -1) }, true)
    },
    finish: (store) => {
      const now = state.getState()
      if (now.kind !== 'tube' || now.points.length < 2) return
      const { role, points, outsideDiameterMm, wallMm } = now
      store.actions.edit('Trace a tube', (layout) =>
        addTracedTube(layout, { role, points, outsideDiameterMm, wallMm }),
      )
      state.setState(OFF, true)
    },
    callOff: () => state.setState(OFF, true),
  }
}

/** The points traced so far as an elevation sees them. */
export const tracedLine = (trace: Trace, elevation: Elevation): readonly PlanePointMm[] =>
  trace.kind === 'tube' ? trace.points.map((point) => projected(point, elevation)) : []

/** The page's one trace. */
export const pageTracing = createTracing()
