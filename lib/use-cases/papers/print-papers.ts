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
import { labelsOnSheet, tagLabel, tagSheet } from '@/lib/pdf/tag-label'
import { jobSheetOf } from './job-sheet-of'
import { keptPaper, type Paper } from './kept-paper'
import { outsideSheetOf } from './outside-sheet-of'
import { nextPassAtMill, type NextPass } from '../stations/next-pass-at-mill'
import { paperHeads, type PaperHead } from './paper-head'
import { printSetting } from './print-spec'
import { qrTextOf } from './tag-address'
import { castingWords, sideWords } from './spec-words'

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
  return keptPaper(
    { kind: 'job-sheet', name: `job-${job.number}.pdf`, data, setting: printSetting(shop, now) },
    jobSheet,
  )
}

/** The mill's next pass while a flat cut to size is still to be made; null otherwise. */
async function passToCome(reader: Reader, head: PaperHead): Promise<NextPass | null> {
  const open = head.route.some(
    ({ stepId, state }) => stepId === 'flat-cut' && state !== 'done' && state !== 'waived',
  )
  if (!open || !head.plan || head.plan.kind === 'clean-up' || head.plan.kind === 'none') return null
  return nextPassAtMill(reader, head, head.plan, head.settings)
}

export type LabelsAsked = {
  /** The first free place on a sheet of labels, 1 to 27; null: a label printer, a page a label. */
  readonly first: number | null
  /** The heads to print for; empty: all of the job. */
  readonly tags: readonly string[]
}

const allLabels: LabelsAsked = { first: null, tags: [] }

/** A label a head, to be tied on beside the tag. */
export async function printTagLabels(
  actor: Actor,
  number: string,
  now: Date,
  asked = allLabels,
): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  const client = await db()
  const job = await paperJob(client, number)
  const heads = await paperHeads(client, await paperVisitsOfJob(client, job.id))
  const shop = await shopOf(client)
  if (asked.first !== null && (asked.first < 1 || asked.first > labelsOnSheet)) {
    const message = `A sheet has ${labelsOnSheet} labels: the first free one is 1 to ${labelsOnSheet}.`
    throw new RefusedError({ code: 'invalid', message })
  }
  const wanted = (tag: string) => asked.tags.length === 0 || asked.tags.includes(tag)
  const tagged = heads.filter((head) => isTag(head.tag) && wanted(head.tag))
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
  const { first } = asked
  const kept = { name: `tags-${job.number}.pdf`, setting: printSetting(shop, now) }
  return first === null
    ? keptPaper({ ...kept, kind: 'tag-labels', data: labels }, tagLabel)
    : keptPaper({ ...kept, kind: 'tag-sheet', data: { first, labels } }, ({ first, labels }, setting) =>
        tagSheet(labels, first, setting),
      )
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
  return keptPaper(
    { kind: 'outside-sheet', name: `outside-${order.number}.pdf`, data, setting: printSetting(shop, now) },
    outsideSheet,
  )
}
