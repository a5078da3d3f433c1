import { chamberOfPoint, millStops } from '../chamber/mill-point'
import { pointSets, type PointSet } from './types'
import { oneOfEach, ports, valvePoint, valvesOf, type ValveCounts } from './valves'

export type PointFacts = {
  readonly chambers: number
  /** Valves a chamber; one of each when left out. */
  readonly valves?: ValveCounts | undefined
  /** Lifts of a flow run, in inches; the customary grid when none are given. */
  readonly liftsIn?: readonly number[]
}

/** Common practice: every tenth of an inch to 0.600. */
const customaryLiftsIn = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6]

const numbered = (count: number): string[] => Array.from({ length: Math.max(0, count) }, (_, i) => String(i + 1))

/**
 * The points of a head at which one kind of reading is taken, in the order they are read.
 *
 * `chambers`: number of chambers, 1–12. Assumes chambers and ends counted from the marked end, intake face toward you.
 * Example: corners → intake-1, exhaust-1, intake-2, exhaust-2.
 */
export function pointsOf(pointSet: PointSet, { chambers, valves, liftsIn }: PointFacts): readonly string[] {
  if (pointSet === 'each-valve') return valvesOf(chambers, valves ?? oneOfEach).map(valvePoint)
  const known = liftsIn === undefined ? usual().get(pointSet)?.[chambers] : undefined
  return known ?? listOf(pointSet, chambers, liftsIn ?? customaryLiftsIn)
}

function listOf(pointSet: PointSet, chambers: number, liftsIn: readonly number[]): readonly string[] {
  switch (pointSet) {
    case 'one':
      return ['']
    case 'chambers':
      return numbered(chambers)
    case 'corners':
      return ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']
    case 'edges':
    case 'valves':
      return [...ports]
    case 'each-valve':
      return valvesOf(chambers, oneOfEach).map(valvePoint)
    case 'chamber-valves':
      return numbered(chambers).flatMap((chamber) => ports.map((port) => `${chamber}-${port}`))
    case 'across-along':
      return ['across', 'along']
    case 'face-ends':
      return ['deck-1', 'cover-1', 'deck-2', 'cover-2']
    case 'ends':
      return ['end-1', 'end-2']
    case 'seat-open':
      return ['seat', 'open']
    case 'flow':
      return ports.flatMap((port) => liftsIn.map((lift) => `${port}@${lift.toFixed(3)}`))
  }
}

const fixedLabels: Readonly<Record<string, string>> = {
  across: 'across',
  along: 'along',
  'end-1': 'end 1',
  'deck-1': 'deck side of end 1',
  'cover-1': 'cover side of end 1',
  'deck-2': 'deck side of end 2',
  'cover-2': 'cover side of end 2',
  'end-2': 'end 2',
  seat: 'on the seat',
  open: 'valve open',
  before: 'before the cut',
  'at-stop': 'at first stop',
  'at-size': 'at size',
}

/** A point in words: "chamber 3", "chamber 3 intake", "intake end 1", "intake at 0.300 in"; '' for a single answer. */
export function pointLabel(point: string): string {
  return fixedLabels[point] ?? labels().get(point) ?? worded(point)
}

/** Most chambers of a head. */
const mostChambers = 12

/** Made at the first use: a page that only lists heads has no use for them. */
function once<Made>(make: () => Made): () => Made {
  let made: { readonly as: Made } | null = null
  return () => (made ??= { as: make() }).as
}

/** Lists that every route asks for: by set, then by number of chambers. */
const usual = once<ReadonlyMap<PointSet, readonly (readonly string[])[]>>(
  () =>
    new Map(
      pointSets.map((pointSet) => [
        pointSet,
        Array.from({ length: mostChambers + 1 }, (_, chambers) => listOf(pointSet, chambers, customaryLiftsIn)),
      ]),
    ),
)

/** Those of the largest head, said once: a check for release names a hundred of them. */
const labels = once<ReadonlyMap<string, string>>(
  () =>
    new Map(
      pointSets
        .flatMap((pointSet) => listOf(pointSet, mostChambers, customaryLiftsIn))
        .map((point) => [point, worded(point)]),
    ),
)

function worded(point: string): string {
  const stop = millStops.find((one) => point.startsWith(`${one}-`))
  if (stop) return `chamber ${chamberOfPoint(point)} ${fixedLabels[stop]}`
  const [port, lift] = point.split('@')
  if (port && lift) return `${port} at ${lift} in`
  if (/^\d+$/.test(point)) return `chamber ${point}`
  const [first = '', second = '', third = ''] = point.split('-')
  // Of two valves of a kind the second one has a number.
  if (/^\d+$/.test(first)) return `chamber ${first} ${second}${third === '' ? '' : ` ${third}`}`
  return /^\d+$/.test(second) ? `${first} end ${second}` : point
}
