import { touchOffDepth } from '@/lib/core/at-mill/touch-off'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { depthToThickness } from '@/lib/core/flat-deck/thickness'
import type { Dossier } from './dossier'
import { headNow } from './head-now'

/** Thinnest corner before the cut, and the least that the record allows, in inches; null: not known. */
export const thicknessAtMill = (dossier: Dossier) => ({
  nowIn: headNow(dossier).head.thicknessIn,
  leastIn: dossier.casting.thicknessLeastIn ?? null,
})

/**
 * How deep this head of a flat-deck plan is cut from its first touch-off, in inches: to the wanted thickness by its own
 * corners, and never deeper than that leaves the minimum; the plan's depth where its corners are not known.
 */
export function thicknessStop(dossier: Dossier, plan: PlanRecord) {
  const wantedIn = plan.flatDeck?.wantedThicknessIn ?? null
  const { nowIn, leastIn } = thicknessAtMill(dossier)
  const own = depthToThickness(nowIn, wantedIn)
  const mostIn = nowIn === null || leastIn === null ? Infinity : Math.max(0, nowIn - leastIn)
  return {
    depthIn: Math.min(own.ok ? own.value : plan.flatIn, mostIn),
    wantedIn,
    totalIn: touchOffDepth(dossier.readings).totalIn,
  }
}
