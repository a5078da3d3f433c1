import type { CastingFacts } from '../casting/figures'
import type { HeadNow, PlanAnswer } from '../cut/plan-types'
import { meanOrNull } from '../mean'
import { flatDeckAfter, type FlatDeckAfter } from './after-cut'
import { depthToThickness } from './thickness'
import { deepestFlatCut, type DeepestCut } from './deepest-cut'

export type FlatDeckHeadPlan = {
  readonly tag: string
  readonly thicknessNowIn: number | null
  readonly thicknessLeftIn: number | null
  /** This head's own depth: heads of a pair that differ are cut to one thickness. */
  readonly depthIn: number
  /** Null: the record lacks an angle or a place. */
  readonly after: FlatDeckAfter | null
  /** What `after` needs, in words; '' when it is there. */
  readonly needs: string
  /** The deepest cut within the limits without seat work; null: nothing to go by. */
  readonly deepest: DeepestCut | null
}

/**
 * What a plan makes of each flat-deck head, and what the heads hold over a piston before and after, in cc.
 *
 * @param sinkIn what the planned seat work sinks every valve, 0–0.25 in
 * @param wantedThicknessIn 0.3–12 in; null: every head is cut as deep as the plan says
 *
 * Derived: as `flatDeckAfter` and `deepestFlatCut`. Example: one head read at no valve → no rows, volumes null.
 */
export function flatDeckPlan(
  heads: readonly HeadNow[],
  plan: Pick<PlanAnswer, 'flatIn' | 'angleIn'>,
  casting: CastingFacts,
  sinkIn: number,
  wantedThicknessIn: number | null,
): { readonly heads: readonly FlatDeckHeadPlan[]; readonly beforeCc: number | null; readonly afterCc: number | null } {
  const found = heads.map(({ tag, thicknessIn, flatDeck }): FlatDeckHeadPlan => {
    const own = wantedThicknessIn === null ? null : depthToThickness(thicknessIn, wantedThicknessIn)
    const depthIn = own?.ok ? own.value : plan.flatIn
    const cut = { flatIn: depthIn, angleIn: plan.angleIn, milledWidthIn: casting.milledWidthIn }
    const now = flatDeck ?? { recessionIn: {}, protrusionIn: {} }
    const after = flatDeckAfter(now, casting, cut, sinkIn)
    const deepest = deepestFlatCut(now, casting, thicknessIn)
    return {
      tag,
      thicknessNowIn: thicknessIn,
      thicknessLeftIn: thicknessIn === null ? null : thicknessIn - depthIn - plan.angleIn,
      depthIn,
      after: after.ok ? after.value : null,
      needs: after.ok ? '' : after.refusal.message,
      deepest: deepest.ok ? deepest.value : null,
    }
  })
  const volumes = (which: 'beforeCc' | 'afterCc') => {
    const all = found.map(({ after }) => after?.[which] ?? null)
    return meanOrNull(all.flatMap((cc) => (cc === null ? [] : [cc])).length === all.length ? all.map(Number) : [])
  }
  return { heads: found, beforeCc: volumes('beforeCc'), afterCc: volumes('afterCc') }
}
