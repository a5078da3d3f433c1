import { randomUUID } from 'node:crypto'
import { expect } from 'vitest'
import { RefusedError } from '@/lib/core/errors'
import { closeClient, openClient } from '@/lib/data/client'
import { db } from '@/lib/data/db'
import { loadDossier } from '@/lib/dossier/dossier'
import { refusalOf } from '@/lib/web/error-to-response'
import type { TestDatabase } from '../../setup/database'
import { monday } from '../../use-cases/jobs/counter-shop'
import { valuesOf } from './bench-deeds'
import { accountNow } from './counter-deeds'
import type { Deed, HeadModel, JobModel, Model } from './model'

/** How often each kind of deed went through and was refused, to see that histories come anywhere. */
export const tally = new Map<string, { yes: number; no: number }>()

function count(what: string, isRefused: boolean): void {
  const [kind = ''] = what.split(' ')
  const so = tally.get(kind) ?? { yes: 0, no: 0 }
  tally.set(kind, isRefused ? { ...so, no: so.no + 1 } : { ...so, yes: so.yes + 1 })
}

const told: readonly string[] = ['tick', 'undo', 'waive', 'release', 'sent', 'received']

/** The shop itself, looked at from outside. Its clock goes where it is set. */
export class RealShop {
  #now = monday.getTime()

  constructor(private readonly database: TestDatabase) {}

  setClock(hours: number): void {
    this.#now = monday.getTime() + hours * 60 * 60 * 1000
  }

  /** The process ends and another begins. */
  async crash(): Promise<void> {
    await closeClient(this.database.url)
    await openClient(this.database.url)
  }

  /**
   * Does it (`times` of the same at once), holds the answer against the forecast, and looks at what is on record. True: it
   * went through.
   */
  async carryOut(model: Model, deed: Deed, times: number): Promise<boolean> {
    this.#now += 60_000
    const moment = { now: new Date(this.#now), op: { id: randomUUID(), hash: deed.what } }
    const before = await counts()
    const again = () => deed.run(moment)
    const answers = await Promise.all(Array.from({ length: times }, () => again().then(said, refused)))
    const [answer] = answers
    expect(answers, deed.what).toEqual(answers.map(() => answer))
    count(deed.what, answer !== undefined && 'refused' in answer)
    if (answer && 'refused' in answer) {
      expect(deed.forecast, `${deed.what} was refused: ${answer.refused}`).not.toBe('must')
      expect(await counts(), `${deed.what} was refused`).toEqual(before)
    } else {
      expect(deed.forecast, `${deed.what} went through`).not.toBe('must not')
      deed.follow(answer?.said as never)
      model.done.push({ what: deed.what, answer: answer?.said, again })
    }
    await this.look(model, deed)
    return answer !== undefined && 'said' in answer
  }

  /** An answer that got lost is asked for again: the same, and nothing is done. */
  async sendAgain(model: Model, which: number): Promise<void> {
    const done = model.done[which % Math.max(1, model.done.length)]
    if (!done) return
    const before = await counts()
    expect(await done.again(), done.what).toEqual(done.answer)
    expect(await counts(), `${done.what} sent again`).toEqual(before)
  }

  async look(model: Model, { head, job }: Pick<Deed, 'head' | 'job'>): Promise<void> {
    if (head) await lookAtHead(head)
    if (job) await lookAtJob(job)
    expect((await counts()).operations).toBe(model.done.length)
  }

  /** Everything, at the end of a history. */
  async lookAtAll(model: Model): Promise<void> {
    for (const head of model.heads) await lookAtHead(head)
    for (const job of model.jobs) await lookAtJob(job)
    const client = await db()
    const jobs = await client.job.findMany({ orderBy: { number: 'asc' }, select: { number: true } })
    expect(jobs.map(({ number }) => number)).toEqual(model.jobs.map(({ number }) => number).sort())
    for (const numbers of [model.jobs.map(({ number }) => number), model.invoices, model.receipts]) inARow(numbers)
    const papers = await client.moneyPaper.findMany({ select: { number: true } })
    const given = [...model.invoices, ...model.receipts]
    expect(papers.map(({ number }) => number).sort()).toEqual(given.sort())
    const ofNoDeed = await client.auditEntry.count({ where: { operationId: null } })
    expect(ofNoDeed).toBe(0)
  }
}

const said = (value: unknown) => ({ said: value })

/** Anything but a refusal in words fails the history. */
function refused(error: unknown): { readonly refused: string } {
  if (error instanceof RefusedError) return { refused: error.refusal.message }
  const { code, message } = refusalOf(error)
  throw new Error(`${code}: ${message}`, { cause: error })
}

async function counts() {
  const client = await db()
  const [operations, audit, events] = await Promise.all([
    client.operation.count(),
    client.auditEntry.count(),
    client.visitEvent.count(),
  ])
  return { operations, audit, events }
}

async function lookAtHead(head: HeadModel): Promise<void> {
  const client = await db()
  const found = await loadDossier(client, head.visitId)
  const events = await client.visitEvent.findMany({ where: { visitId: head.visitId }, orderBy: { seq: 'asc' } })
  expect(events.map(({ kind }) => kind).filter((kind) => told.includes(kind))).toEqual(head.events)
  expect(valuesOf(found)).toEqual(head.values)
  const open = await client.hold.findMany({ where: { visitId: head.visitId, decidedAt: null }, orderBy: { id: 'asc' } })
  expect(open.map(({ id }) => id).sort()).toEqual(head.openHolds.map(({ id }) => id).sort())
  expect(await client.release.count({ where: { visitId: head.visitId } })).toBe(head.releases)
  // What the stations draw is what the facts make.
  const rows = await client.routeStep.findMany({ where: { visitId: head.visitId }, orderBy: { place: 'asc' } })
  expect(rows.map(({ stepId, occurrence, orderKey, state }) => `${stepId}|${occurrence}|${orderKey} ${state}`)).toEqual(
    found.route.map(({ stepId, occurrence, orderId, state }) => `${stepId}|${occurrence}|${orderId ?? ''} ${state}`),
  )
}

async function lookAtJob(job: JobModel): Promise<void> {
  const client = await db()
  const { dueMinor } = await client.job.findUniqueOrThrow({ where: { id: job.id } })
  expect(dueMinor).toBe(job.dueMinor)
  expect((await accountNow(job)).openMinor).toBe(job.openMinor)
  const plans = await client.planVersion.findMany({ where: { pairId: job.pairId }, orderBy: { number: 'asc' } })
  expect(plans.map(({ number }) => number)).toEqual(Array.from({ length: job.plans }, (_, i) => i + 1))
}

/** Each number one more than the one before: none is lost, none is given twice. */
function inARow(numbers: readonly string[]): void {
  const counted = numbers.map((number) => Number(/\d+$/.exec(number)?.[0])).sort((a, b) => a - b)
  expect(counted).toEqual(counted.map((_, i) => (counted[0] ?? 0) + i))
}
