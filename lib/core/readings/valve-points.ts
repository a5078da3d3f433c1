import type { CastingFacts } from '../casting/figures'

export type Port = 'intake' | 'exhaust'
type ValveCounts = Pick<CastingFacts, 'intakeValves' | 'exhaustValves'>

/** A record that says nothing of it has one intake and one exhaust valve a chamber. */
const usualValves = 1

const ports = ['intake', 'exhaust'] as const

/**
 * The name of every valve of a head: chamber from the marked end, port, and a number from the second of a kind on.
 *
 * @param chambers 1–12; @param counts 1–3 intake and 1–3 exhaust valves a chamber (not on record: one of each)
 *
 * By definition. Example: two chambers with two intake valves and one exhaust → 1-intake, 1-intake-2, 1-exhaust,
 * 2-intake, 2-intake-2, 2-exhaust.
 */
export const valvePoints = (chambers: number, counts: ValveCounts): readonly string[] =>
  Array.from({ length: chambers }, (_, at) => at + 1).flatMap((chamber) =>
    ports.flatMap((port) =>
      Array.from({ length: counts[`${port}Valves`] ?? usualValves }, (_, at) =>
        at === 0 ? `${chamber}-${port}` : `${chamber}-${port}-${at + 1}`,
      ),
    ),
  )

/** The chamber of a valve, as its name has it. Example: "3-exhaust-2" → "3". */
export const chamberOfValve = (valve: string): string => valve.split('-')[0] ?? ''

/** Whether a valve is an intake or an exhaust valve, as its name has it. Example: "3-exhaust-2" → exhaust. */
export const portOfValve = (valve: string): Port => (valve.split('-')[1] === 'exhaust' ? 'exhaust' : 'intake')
