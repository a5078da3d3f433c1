import { shopCutOf } from '@/lib/core/rate/shop-cut'
import { castingFactsOf } from '@/lib/data/known-figures'
import type { Tx } from '@/lib/data/db'
import { keepShopCut, newestShopCuts, raiseQuestion } from '@/lib/data/rate-cuts'
import { judgedRecord } from './casting-rate'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'

/** Rewrites what this visit's cuts took, from its facts; a visit that was not cut has no row. */
export async function projectShopCut(tx: Tx, dossier: Dossier, now: Date): Promise<void> {
  const { visit, facts } = dossier
  const { casting, chamberForm: form, id: headId } = visit.head
  if (!casting || !mayBeCut(facts)) return
  const cut = shopCutOf(cutFactsOf(dossier))
  const lastPassAt = visit.events.find(({ seq }) => seq === cut?.seq)?.at ?? null
  await keepShopCut(tx, visit.id, cut, { castingId: casting.id, form, headId, lastPassAt })
  if (cut?.whyNot === '') await raiseQuestions(tx, dossier, form, now)
}

/** A cut that disagrees with the others is asked about, this one or one before it. */
async function raiseQuestions(tx: Tx, { visit, settings }: Dossier, form: string, now: Date): Promise<void> {
  const { casting } = visit.head
  if (!casting) return
  const kept = await newestShopCuts(tx, casting.id, form)
  const { judged } = judgedRecord(castingFactsOf(casting, form), kept, null, settings)
  for (const { cut, verdict } of judged) {
    if (verdict === 'screened' && !cut.questioned) await raiseQuestion(tx, cut, now)
  }
}

/** Whether it is worth asking: most changes are of heads that no cutter has touched. */
const mayBeCut = ({ readings, events, orders }: Dossier['facts']): boolean =>
  readings.some(({ step }) => step.stepId === 'flat-cut' || step.stepId === 'angle-cut') ||
  events.some(({ step }) => step?.stepId === 'flat-cut' || step?.stepId === 'angle-cut') ||
  orders.some((order) => order.receivedSeq !== null)
