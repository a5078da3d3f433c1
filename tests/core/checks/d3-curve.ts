import { curveMonotoneX, line } from 'd3-shape'

export type Reading = readonly [liftIn: number, flowCfm: number]
type Piece = readonly [from: Reading, handle1: Reading, handle2: Reading, to: Reading]

/** The pieces that d3-shape draws as `curveMonotoneX`, taken from its own drawing calls. */
function pieces(readings: readonly Reading[]): Piece[] {
  const drawn: Piece[] = []
  let pen: Reading = [NaN, NaN]
  const stub = { closePath: () => undefined, arc: () => undefined, rect: () => undefined }
  const path = {
    ...stub,
    moveTo: (x: number, y: number) => {
      pen = [x, y]
    },
    lineTo: (x: number, y: number) => {
      pen = [x, y]
    },
    bezierCurveTo: (x1: number, y1: number, x2: number, y2: number, x: number, y: number) => {
      drawn.push([pen, [x1, y1], [x2, y2], [x, y]])
      pen = [x, y]
    },
  }
  const draw = line<Reading>().curve(curveMonotoneX)
  draw.context(path as unknown as CanvasRenderingContext2D)([...readings])
  return drawn
}

/** The handles stand at thirds of a piece, so that its parameter runs evenly with the lift. */
function on([[, y0], [, y1], [, y2], [, y3]]: Piece, t: number): number {
  const u = 1 - t
  return u ** 3 * y0 + 3 * u * u * t * y1 + 3 * u * t * t * y2 + t ** 3 * y3
}

export function d3FlowAt(readings: readonly Reading[], liftIn: number): number {
  const piece = pieces(readings).find(([, , , to]) => liftIn <= to[0])
  return piece ? on(piece, (liftIn - piece[0][0]) / (piece[3][0] - piece[0][0])) : NaN
}

/** By the midpoint rule. */
export function d3MeanFlow(readings: readonly Reading[], fromIn: number, toIn: number, steps: number): number {
  const drawn = pieces(readings)
  let sum = 0
  for (let at = 0; at < steps; at++) {
    const liftIn = fromIn + ((toIn - fromIn) * (at + 0.5)) / steps
    const piece = drawn.find(([, , , to]) => liftIn <= to[0])
    sum += piece ? on(piece, (liftIn - piece[0][0]) / (piece[3][0] - piece[0][0])) : NaN
  }
  return sum / steps
}
