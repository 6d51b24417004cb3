import { crc32, deflateSync } from 'node:zlib'
import { cross, dot, unit, type Vector } from '../../tests/support/spaceVector'

export interface Spot {
  readonly u: number
  readonly v: number
}

export interface Disc extends Spot {
  readonly radiusMm: number
  readonly colour: readonly [number, number, number]
}

export interface SyntheticCamera {
  /** Where the lens is, mm: along u, up v, and away from the plane. */
  readonly lens: { readonly u: number; readonly v: number; readonly away: number }
  readonly looksAt: Spot
  readonly focalPx: number
  readonly widthPx: number
  readonly heightPx: number
}

/**
 * A pinhole camera before the plane of a drawing: u to the right, v up, w toward the viewer. Source: Hartley & Zisserman, Multiple View Geometry
 * in Computer Vision, 2nd ed., section 6.1 (from memory).
 */
export class Pinhole {
  readonly camera: SyntheticCamera
  readonly #right: Vector
  readonly #down: Vector
  readonly #sight: Vector
  readonly #lens: Vector

  constructor(camera: SyntheticCamera) {
    this.camera = camera
    const { lens, looksAt } = camera
    this.#lens = [lens.u, lens.v, lens.away]
    this.#sight = unit([looksAt.u - lens.u, looksAt.v - lens.v, -lens.away])
    this.#right = unit(cross(this.#sight, [0, 1, 0]))
    this.#down = cross(this.#sight, this.#right)
  }

  /** Where a place of the plane is in the picture, px. */
  seen({ u, v }: Spot): { readonly x: number; readonly y: number } {
    const from: Vector = [u - this.#lens[0], v - this.#lens[1], -this.#lens[2]]
    const depth = dot(from, this.#sight)
    const { focalPx, widthPx, heightPx } = this.camera
    return {
      x: widthPx / 2 + (focalPx * dot(from, this.#right)) / depth,
      y: heightPx / 2 + (focalPx * dot(from, this.#down)) / depth,
    }
  }

  /** Which place of the plane a point of the picture shows: where its ray meets the plane. */
  place(x: number, y: number): Spot {
    const { focalPx, widthPx, heightPx } = this.camera
    const across = (x - widthPx / 2) / focalPx
    const below = (y - heightPx / 2) / focalPx
    const toward = (axis: 0 | 1 | 2): number =>
      this.#sight[axis] + across * this.#right[axis] + below * this.#down[axis]
    const reach = -this.#lens[2] / toward(2)
    return { u: this.#lens[0] + reach * toward(0), v: this.#lens[1] + reach * toward(1) }
  }
}

const PAPER = [250, 250, 250] as const

/** The colour that a ray through a point of the picture meets: discs on white paper. */
const colourAt = (pinhole: Pinhole, discs: readonly Disc[], x: number, y: number) => {
  const { u, v } = pinhole.place(x, y)
  for (const disc of discs) if ((u - disc.u) ** 2 + (v - disc.v) ** 2 < disc.radiusMm ** 2) return disc.colour
  return PAPER
}

/** What the camera sees; every pixel is the mean of four rays. */
const rendered = (pinhole: Pinhole, discs: readonly Disc[]): Buffer => {
  const { widthPx, heightPx } = pinhole.camera
  const rows = Buffer.alloc(heightPx * (3 * widthPx + 1))
  for (let row = 0; row < heightPx; row += 1)
    for (let column = 0; column < widthPx; column += 1) {
      const at = row * (3 * widthPx + 1) + 1 + 3 * column
      const rays = [0.25, 0.75].flatMap((dy) =>
        [0.25, 0.75].map((dx) => colourAt(pinhole, discs, column + dx, row + dy)),
      )
      for (const channel of [0, 1, 2])
        rows[at + channel] = Math.round(rays.reduce((sum, colour) => sum + (colour[channel] ?? 0), 0) / 4)
    }
  return rows
}

const chunk = (type: string, data: Buffer): Buffer => {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const sum = Buffer.alloc(4)
  sum.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, sum])
}

/** A picture file of what the camera sees. Source of the format: PNG (Portable Network Graphics), W3C, third edition (from memory). */
export const syntheticPhoto = (pinhole: Pinhole, discs: readonly Disc[]): Buffer => {
  const { widthPx, heightPx } = pinhole.camera
  const header = Buffer.alloc(13)
  header.writeUInt32BE(widthPx, 0)
  header.writeUInt32BE(heightPx, 4)
  // Eight bits a channel, red green blue, no interlacing.
  header.set([8, 2, 0, 0, 0], 8)
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rendered(pinhole, discs))),
    chunk('IEND', Buffer.alloc(0)),
  ])
}
