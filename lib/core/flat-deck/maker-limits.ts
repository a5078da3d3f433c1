import type { CastingFacts } from '../casting/figures'
import type { Port } from '../readings/valves'

/** Typed from the engine maker's data; null: not on record. The shop has no figure of its own in its place. */
export type MakerLimits = { readonly leastIn: number | null; readonly mostIn: number | null }

export type FlatDeckLimits = {
  readonly recession: Readonly<Record<Port, MakerLimits>>
  readonly protrusion: MakerLimits
  readonly thicknessLeastIn: number | null
}

export type Judged = {
  readonly state: 'within' | 'under' | 'over' | 'no-limit'
  /** Past the limit by so much, in inches; 0 inside it. */
  readonly byIn: number
}

/** Decimals are not exact in binary: a figure on its limit is inside it. */
const rounding = 1e-9

/**
 * A figure of a flat-deck head against the engine maker's limits, in inches.
 *
 * @returns `no-limit` when neither end is on record; one end alone is held
 *
 * Derived: comparison with both ends. Example: 0.021 of 0.024 to 0.040 → under, by 0.003.
 */
export function judgeByLimits(valueIn: number, { leastIn, mostIn }: MakerLimits): Judged {
  if (leastIn === null && mostIn === null) return { state: 'no-limit', byIn: 0 }
  if (leastIn !== null && valueIn < leastIn - rounding) return { state: 'under', byIn: leastIn - valueIn }
  if (mostIn !== null && valueIn > mostIn + rounding) return { state: 'over', byIn: valueIn - mostIn }
  return { state: 'within', byIn: 0 }
}

/**
 * The engine maker's limits as the casting record has them.
 * By definition: the record's figures. Example: no figure typed → both ends of all three null.
 */
export const flatDeckLimitsOf = (casting: CastingFacts): FlatDeckLimits => ({
  recession: {
    intake: { leastIn: casting.intakeRecessionLeastIn ?? null, mostIn: casting.intakeRecessionMostIn ?? null },
    exhaust: { leastIn: casting.exhaustRecessionLeastIn ?? null, mostIn: casting.exhaustRecessionMostIn ?? null },
  },
  protrusion: {
    leastIn: casting.injectorProtrusionLeastIn ?? null,
    mostIn: casting.injectorProtrusionMostIn ?? null,
  },
  thicknessLeastIn: casting.thicknessLeastIn ?? null,
})
