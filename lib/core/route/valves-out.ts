import type { ReadingFact } from '../readings/types'
import { oneOfEach, placesOf } from '../readings/valves'
import { isValveKind, type ValveKind } from '../readings/valve-kinds'
import { pastCellLimit, type PastLimit } from '../valve-sheet/past-limit'
import { valveSheet } from '../valve-sheet/sheet'
import type { RouteFacts } from './types'

export type ValveOut = PastLimit & { readonly kind: ValveKind; readonly reading: ReadingFact }

type Facts = Pick<RouteFacts, 'valveLimits' | 'chambers' | 'valves' | 'readings'>

/**
 * The figures of one step's valves that lie past their limits, each reading once: a figure that stands for all valves of a
 * kind is judged at each of them, and named once.
 *
 * @param counted the readings of the step that count; in the unit of their kind
 * @returns nothing where the head has no limits
 *
 * Derived: as `pastCellLimit`. Example: runout 0.0030 at 2-exhaust where 0.0020 is the limit → that reading, over.
 */
export function valvesOut(counted: readonly ReadingFact[], facts: Facts): readonly ValveOut[] {
  const { valveLimits, chambers, valves = oneOfEach } = facts
  if (!valveLimits || !counted.some(isOfValves)) return []
  const found = new Map<string, ValveOut>()
  for (const { column, cells } of valveSheet(counted, { chambers, valves }).columns) {
    for (const { point, reading } of cells) {
      if (reading === null || reading.value === null || found.has(reading.id)) continue
      const value = column.kind === 'installed-height' ? reading.value - shimsSince(point, facts) : reading.value
      const past = pastCellLimit(column.kind, point, value, valveLimits)
      if (past) found.set(reading.id, { ...past, kind: column.kind, reading })
    }
  }
  return [...found.values()]
}

const isOfValves = ({ kind }: ReadingFact): boolean => isValveKind(kind) || kind === 'spring-pressure'

/** The installed height is measured with the shims in; what the spring bench adds later comes off it, in inches. */
function shimsSince(point: string, { readings }: Facts): number {
  const at = (stepId: 'heights' | 'springs'): number | null =>
    placesOf('shims', point)
      .map((place) =>
        readings.findLast(
          ({ kind, point: read, step }) => kind === 'shims' && read === place.point && step.stepId === stepId,
        ),
      )
      .find((reading) => reading !== undefined)?.value ?? null
  const [then, now] = [at('heights'), at('springs')]
  return then === null || now === null ? 0 : now - then
}
