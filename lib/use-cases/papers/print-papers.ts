import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db, type Reader } from '@/lib/data/db'
import { paperJob, paperOrder } from '@/lib/data/papers'
import { namesOf } from '@/lib/data/people'
import { shopOf } from '@/lib/data/shop'
import { jobSheet, type JobSheetData } from '@/lib/pdf/job-sheet'
import { outsideSheet } from '@/lib/pdf/outside-sheet'
import { jobSheetOf } from './job-sheet-of'
import { keptPaper, type Paper } from '@/lib/papers/kept-paper'
import { outsideSheetOf } from './outside-sheet-of'
import { nextPassAtMill, type NextPass } from '@/lib/dossier/next-pass'
import { peopleOfChecks } from '@/lib/dossier/second-check'
import { loadDossiers, type Dossier } from '@/lib/dossier/dossier'
import { printSetting } from '@/lib/papers/print-spec'
import { withLogo } from '@/lib/papers/with-logo'

export type { Paper, StoredPaper } from '@/lib/papers/kept-paper'

/** Everything the job sheet of a job says. */
export async function jobSheetData(reader: Reader, number: string): Promise<JobSheetData> {
  const job = await paperJob(reader, number)
  const heads = await loadDossiers(reader, { jobId: job.id })
  const names = await namesOf(
    heads.flatMap((head) => [...head.visit.waivers.map((waiver) => waiver.byId), ...peopleOfChecks(head)]),
  )
  const passes = new Map<string, NextPass>()
  for (const head of heads) {
    const pass = await passToCome(reader, head)
    if (pass) passes.set(head.visit.id, pass)
  }
  return jobSheetOf(
    job,
    heads,
    await shopOf(reader),
    (id) => names.get(id) ?? '',
    (id) => passes.get(id) ?? null,
  )
}

export async function printJobSheet(actor: Actor, number: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  const client = await db()
  const data = await jobSheetData(client, number)
  const setting = printSetting(await shopOf(client), now)
  return keptPaper({ kind: 'job-sheet', name: `job-${data.jobNumber}.pdf`, data, setting }, jobSheet)
}

/** The mill's next pass while a flat cut to size is still to be made; null otherwise. */
async function passToCome(reader: Reader, head: Dossier): Promise<NextPass | null> {
  const open = head.route.some(({ stepId, state }) => stepId === 'flat-cut' && state !== 'done' && state !== 'waived')
  if (!open || !head.plan || head.plan.flatDeck || head.plan.kind === 'clean-up' || head.plan.kind === 'none')
    return null
  return nextPassAtMill(reader, head, head.plan)
}

export async function printOutsideSheet(actor: Actor, orderId: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  must(allow(actor, 'outside.see'))
  const client = await db()
  const order = await paperOrder(client, orderId)
  const heads = await loadDossiers(client, { ids: order.visits.map((line) => line.visitId) })
  const shop = await shopOf(client)
  const sentBy = (await namesOf([order.byId])).get(order.byId) ?? ''
  const data = outsideSheetOf(order, heads, shop, sentBy)
  return keptPaper(
    { kind: 'outside-sheet', name: `outside-${order.number}.pdf`, data, setting: printSetting(shop, now) },
    withLogo(outsideSheet),
  )
}
