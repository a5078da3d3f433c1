import { shopCutOf, type ShopCut } from '@/lib/core/rate/shop-cut'
import type { Tx } from '@/lib/data/db'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'

/** Rewrites what this visit's cuts took, from its facts; a visit that was not cut has no row. */
export async function projectShopCut(tx: Tx, dossier: Dossier): Promise<void> {
  const { visit, facts } = dossier
  const { casting } = visit.head
  if (!casting || !mayBeCut(facts)) return
  const cut = shopCutOf(cutFactsOf(dossier))
  if (!cut) {
    await tx.shopCut.deleteMany({ where: { visitId: visit.id } })
    return
  }
  const data = rowOf(cut)
  await tx.shopCut.upsert({
    where: { visitId: visit.id },
    create: { visitId: visit.id, castingId: casting.id, form: visit.head.chamberForm, ...data },
    update: data,
  })
}

/** Whether it is worth asking: most changes are of heads that no cutter has touched. */
const mayBeCut = ({ readings, events, orders }: Dossier['facts']): boolean =>
  readings.some(({ step }) => step.stepId === 'flat-cut' || step.stepId === 'angle-cut') ||
  events.some(({ step }) => step?.stepId === 'flat-cut' || step?.stepId === 'angle-cut') ||
  orders.some((order) => order.receivedSeq !== null)

const rowOf = ({ seq, edges, before, after, whyNot }: ShopCut) => ({
  seq,
  shallowIn: edges?.shallowIn ?? null,
  deepIn: edges?.deepIn ?? null,
  beforeCc: before?.cc ?? null,
  uBeforeCc: before?.uCc ?? null,
  afterCc: after?.cc ?? null,
  uAfterCc: after?.uCc ?? null,
  whyNot,
})
