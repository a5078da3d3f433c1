import type { CastingFacts } from '../casting/figures'
import type { ReadingKind } from './specs'
import { isValveKind, type ValveKind } from './valve-kinds'

export type Port = 'intake' | 'exhaust'
export const ports: readonly Port[] = ['intake', 'exhaust']

/** Valves a chamber, of each kind, 1–3. */
export type ValveCounts = Readonly<Record<Port, number>>

/** Most heads, and every record that does not say. */
export const oneOfEach: ValveCounts = { intake: 1, exhaust: 1 }

/** As the record has it; a record that says nothing has one of each. By definition. Example: 2 and nothing → 2 and 1. */
export const valveCountsOf = ({ intakeValves, exhaustValves }: CastingFacts): ValveCounts => ({
  intake: intakeValves ?? oneOfEach.intake,
  exhaust: exhaustValves ?? oneOfEach.exhaust,
})

/** One valve of a head: chamber 1–12 counted from the marked end, and which of its kind there, from that end too. */
export type Valve = { readonly chamber: number; readonly port: Port; readonly number: number }

/**
 * The point of a valve: "3-intake"; "3-intake-2" is the second intake valve of chamber 3. The first has no number, so that
 * a record that is later found to have two of a kind keeps what was read.
 */
export const valvePoint = ({ chamber, port, number }: Valve): string =>
  number === 1 ? `${chamber}-${port}` : `${chamber}-${port}-${number}`

/**
 * Every valve of a head, chamber by chamber, intake first.
 *
 * @param chambers 1–12; @param counts 1–3 each
 *
 * Example: 2 chambers, 2 intake, 1 exhaust → 1-intake, 1-intake-2, 1-exhaust, 2-intake, 2-intake-2, 2-exhaust.
 */
export const valvesOf = (chambers: number, counts: ValveCounts): readonly Valve[] =>
  upTo(chambers).flatMap((chamber) =>
    ports.flatMap((port) => upTo(counts[port]).map((number) => ({ chamber, port, number }))),
  )

/** No head has more chambers, nor a chamber so many valves. */
const most = 12
const upTo = (count: number): number[] => Array.from({ length: Math.max(0, Math.min(most, count)) }, (_, at) => at + 1)

const valve = /^(\d+)-(intake|exhaust)(?:-(\d+))?$/

/** The valve of a point; null when it is none: a corner is "intake-1". */
export function valveAt(point: string): Valve | null {
  const [, chamber, port, number = '1'] = valve.exec(point) ?? []
  return chamber === undefined ? null : { chamber: Number(chamber), port: port as Port, number: Number(number) }
}

/** The kind of valve that a point lies at; a point of neither counts as intake. */
export const portOf = (point: string): Port => (point.includes('exhaust') ? 'exhaust' : 'intake')

/** The chamber of a valve's point, or of a chamber's own: "3" of "3-exhaust-2" and of "3". */
export const chamberOf = (point: string): string => point.split('-')[0] ?? ''

/** "intake" of "3-intake" and "3-intake-2"; other points stand for themselves. */
export const groupOf = (point: string): string => valveAt(point)?.port ?? point

export type Place = { readonly kind: ReadingKind; readonly point: string }

/**
 * Where the answer for a valve may stand, the first that is given counts: at the valve, else where one answer stood for
 * all valves of its kind, or for the whole head, before each valve had its own.
 *
 * Example: seat width at 2-exhaust → at 2-exhaust, else at exhaust. Seat pressure → else spring pressure on the seat.
 */
export function placesOf(kind: ReadingKind, point: string): readonly Place[] {
  const at = valveAt(point)
  if (at === null || !isValveKind(kind)) return [{ kind, point }]
  return [{ kind, point }, ...(forAll[kind] ?? ((port) => [{ kind, point: port }]))(at.port)]
}

/** Where one answer stood for all. */
const forAll: Readonly<Partial<Record<ValveKind, (port: Port) => readonly Place[]>>> = {
  'seat-angles': () => [{ kind: 'seat-angles', point: '' }],
  runout: () => [{ kind: 'runout', point: '' }],
  'seat-pressure': () => [{ kind: 'spring-pressure', point: 'seat' }],
  'open-pressure': () => [{ kind: 'spring-pressure', point: 'open' }],
}
