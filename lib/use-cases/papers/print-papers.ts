import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { isTag } from '@/lib/core/shop/tag-number'
import { db, type Reader } from '@/lib/data/db'
import { paperJob, paperOrder, paperVisits, paperVisitsOfJob } from '@/lib/data/papers'
import { namesOf } from '@/lib/data/people'
import { shopOf } from '@/lib/data/shop'
import { jobSheet } from '@/lib/pdf/job-sheet'
import { outsideSheet } from '@/lib/pdf/outside-sheet'
import { tagLabel } from '@/lib/pdf/tag-label'
import { jobSheetOf } from './job-sheet-of'
import { outsideSheetOf } from './outside-sheet-of'
import { nextPassAtMill, type NextPass } from '../stations/next-pass-at-mill'
import { paperHeads, type PaperHead } from './paper-head'
import { printSetting } from './print-spec'
import { qrTextOf } from './tag-address'
import { castingWords, sideWords } from './spec-words'

export type Paper = { readonly bytes: Uint8Array; readonly name: string }

export async function printJobSheet(actor: Actor, number: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  const client = await db()
  const job = await paperJob(client, number)
  const heads = await paperHeads(client, await paperVisitsOfJob(client, job.id))
  const shop = await shopOf(client)
  const names = await namesOf(heads.flatMap(({ visit }) => visit.waivers.map((waiver) => waiver.byId)))
  const passes = new Map<string, NextPass>()
  for (const head of heads) {
    const pass = await passToCome(client, head)
    if (pass) passes.set(head.visit.id, pass)
  }
  const data = jobSheetOf(
    job,
    heads,
    shop,
    (id) => names.get(id) ?? '',
    (id) => passes.get(id) ?? null,
  )
  return { bytes: await jobSheet(data, printSetting(shop, now)), name: `job-${job.number}.pdf` }
}

/** The mill's next pass while a flat cut to size is still to be made; null otherwise. */
async function passToCome(reader: Reader, head: PaperHead): Promise<NextPass | null> {
  const open = head.route.some(
    ({ stepId, state }) => stepId === 'flat-cut' && state !== 'done' && state !== 'waived',
  )
  if (!open || !head.plan || head.plan.kind === 'clean-up' || head.plan.kind === 'none') return null
  return nextPassAtMill(reader, head, head.plan, head.settings)
}

/** A label a head, to be tied on beside the tag. */
export async function printTagLabels(actor: Actor, number: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  const client = await db()
  const job = await paperJob(client, number)
  const heads = await paperHeads(client, await paperVisitsOfJob(client, job.id))
  const shop = await shopOf(client)
  const tagged = heads.filter((head) => isTag(head.tag))
  if (tagged.length === 0) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'No head of this job has a tag yet: what is on order gets its tag when it arrives.',
    })
  }
  const labels = tagged.map((head) => ({
    language: shop.locale,
    tag: head.tag,
    qrText: qrTextOf(head.tag),
    shopName: shop.name,
    jobNumber: job.number,
    casting: castingWords(head),
    side: sideWords(head.visit.side),
  }))
  return { bytes: await tagLabel(labels, printSetting(shop, now)), name: `tags-${job.number}.pdf` }
}

export async function printOutsideSheet(actor: Actor, orderId: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  must(allow(actor, 'outside.see'))
  const client = await db()
  const order = await paperOrder(client, orderId)
  const visits = await paperVisits(
    client,
    order.visits.map((line) => line.visitId),
  )
  const heads = await paperHeads(client, visits)
  const shop = await shopOf(client)
  const sentBy = (await namesOf([order.byId])).get(order.byId) ?? ''
  const data = outsideSheetOf(order, heads, shop, sentBy)
  return { bytes: await outsideSheet(data, printSetting(shop, now)), name: `outside-${order.number}.pdf` }
}
