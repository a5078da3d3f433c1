import type { FlatDeckCaution } from '../cut/cautions'
import type { FlatDeckHeadPlan } from '../flat-deck/plan-of-heads'
import { sinkMoreOf } from './flat-deck-words'

/** What must be said before anybody agrees to the cut: only what passes a limit, or has none. */
export function flatDeckCautions(heads: readonly FlatDeckHeadPlan[], cutIn: number): FlatDeckCaution[] {
  return heads.flatMap((head) => [
    ...valvesPast(head, 'under'),
    ...valvesPast(head, 'over'),
    ...injectorsPast(head),
    ...notRead(head),
    ...ownDepth(head, cutIn),
    ...tooDeep(head),
  ])
}

function valvesPast({ tag, after }: FlatDeckHeadPlan, side: 'under' | 'over'): FlatDeckCaution[] {
  const past = (after?.valves ?? []).filter(({ judged }) => judged.state === side)
  const worst = past.toSorted((a, b) => b.judged.byIn - a.judged.byIn)[0]
  if (!worst) return []
  const { valve, afterIn, limits } = worst
  const limitIn = (side === 'under' ? limits.leastIn : limits.mostIn) ?? 0
  return [{ code: 'valve-past', tag, valve, side, afterIn, limitIn, count: past.length, sinkMoreIn: sinkMoreOf(worst) }]
}

function injectorsPast({ tag, after }: FlatDeckHeadPlan): FlatDeckCaution[] {
  return (after?.injectors ?? []).flatMap(({ chamber, afterIn, judged: { state: side }, limits }) => {
    if (side !== 'under' && side !== 'over') return []
    const limitIn = (side === 'under' ? limits.leastIn : limits.mostIn) ?? 0
    return [{ code: 'injector-past', tag, chamber, side, afterIn, limitIn } as const]
  })
}

function notRead({ tag, after, needs }: FlatDeckHeadPlan): FlatDeckCaution[] {
  if (needs !== '') return [{ code: 'valves-not-known', tag, needs }]
  if (!after || after.valves.length === 0) return [{ code: 'valves-not-read', tag }]
  return after.valves.some(({ judged }) => judged.state === 'no-limit') ? [{ code: 'no-maker-limits', tag }] : []
}

/** Heads of a pair are cut to one thickness, not by one depth. */
const ownDepth = ({ tag, depthIn }: FlatDeckHeadPlan, cutIn: number): FlatDeckCaution[] =>
  Math.abs(depthIn - cutIn) < 0.00005 ? [] : [{ code: 'own-depth', tag, depthIn }]

/** Nothing is past a limit yet, and a clean-up may go deeper than was meant. */
function tooDeep({ tag, deepest, after, depthIn }: FlatDeckHeadPlan): FlatDeckCaution[] {
  if (!deepest || deepest.depthIn >= depthIn - 1e-9 || (after?.valves ?? []).length === 0) return []
  return [{ code: 'no-deeper', tag, depthIn: deepest.depthIn, boundBy: deepest.boundBy, point: deepest.point }]
}
