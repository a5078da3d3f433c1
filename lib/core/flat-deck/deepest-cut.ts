import type { CastingFacts } from '../casting/figures'
import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { portOf } from '../readings/valves'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import type { FlatDeckNow } from './after-cut'
import { flatDeckLimitsOf } from './maker-limits'

/** What sets the end: `point` is the valve or the chamber, '' for the thickness. */
export type DeepestCut = {
  readonly depthIn: number
  readonly boundBy: 'recession' | 'protrusion' | 'thickness'
  readonly point: string
}

/**
 * The deepest flat cut that keeps a flat-deck head within its limits without seat work, and what sets its end.
 *
 * @param now recession and protrusion −0.25–0.5 in; @param thinnestIn 0.3–12 in; null: not measured
 * @returns 0–0.5 in, 0 when one of them is past its limit already; refused as `missing` when no limit is on record or
 *   nothing was read that one holds for
 *
 * The least of: recession − its minimum at each valve, maximum protrusion − protrusion at each chamber, thickness − its
 * minimum. Example: 0.040 with 0.030 at least, 0.060 with 0.075 at most, 4.132 with 4.100 at least → 0.010, that valve.
 * Derived: `recessionAfter` and `protrusionAfter` solved for the cut.
 */
export function deepestFlatCut(now: FlatDeckNow, casting: CastingFacts, thinnestIn: number | null): Result<DeepestCut> {
  const rooms = roomsOf(now, casting, thinnestIn)
  if (!rooms.ok) return rooms
  const [first, ...others] = rooms.value
  if (!first) {
    return refuse('missing', 'Needs a limit of the engine maker on record, and the reading that it holds for.', {
      needs: ['intakeRecessionLeastIn', 'exhaustRecessionLeastIn', 'injectorProtrusionMostIn', 'thicknessLeastIn'],
    })
  }
  const least = others.reduce((most, room) => (room.depthIn < most.depthIn ? room : most), first)
  return ok({ ...least, depthIn: Math.min(quantities.cutDepth.most, Math.max(0, least.depthIn)) })
}

function roomsOf(now: FlatDeckNow, casting: CastingFacts, thinnestIn: number | null): Result<readonly DeepestCut[]> {
  const limits = flatDeckLimitsOf(casting)
  const rooms: DeepestCut[] = []
  for (const [point, beforeIn] of Object.entries(now.recessionIn)) {
    const { leastIn } = limits.recession[portOf(point)]
    if (leastIn === null) continue
    const facts = knownFacts({
      beforeIn: factOf('valve recession', beforeIn, 'recession'),
      leastIn: factOf('minimum recession', leastIn, 'recession'),
    })
    if (!facts.ok) return facts
    rooms.push({ depthIn: beforeIn - leastIn, boundBy: 'recession', point })
  }
  for (const [point, beforeIn] of Object.entries(now.protrusionIn)) {
    const { mostIn } = limits.protrusion
    if (mostIn === null) continue
    const facts = knownFacts({
      beforeIn: factOf('injector protrusion', beforeIn, 'protrusion'),
      mostIn: factOf('maximum protrusion', mostIn, 'protrusion'),
    })
    if (!facts.ok) return facts
    rooms.push({ depthIn: mostIn - beforeIn, boundBy: 'protrusion', point })
  }
  if (thinnestIn !== null && limits.thicknessLeastIn !== null) {
    const facts = knownFacts({
      thicknessIn: factOf('thickness now', thinnestIn, 'thickness'),
      thicknessLeastIn: factOf('minimum thickness', limits.thicknessLeastIn, 'thickness'),
    })
    if (!facts.ok) return facts
    rooms.push({ depthIn: thinnestIn - limits.thicknessLeastIn, boundBy: 'thickness', point: '' })
  }
  return ok(rooms)
}
