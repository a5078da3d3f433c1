import { allow, can } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { MoneyPaperKind } from '@/lib/core/money/paper-facts'
import type { PaymentMethod } from '@/lib/core/money/payment'
import type { Paid } from '@/lib/core/money/totals'
import type { Whereabouts } from '@/lib/core/route/types'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import {
  customerById,
  hasMoreJobs,
  mergesOf,
  papersOfJobs,
  recordOfCustomer,
  sumsOfCustomer,
} from '@/lib/data/customer-record'
import { db } from '@/lib/data/db'
import { findingRow, type FindingRow } from '@/lib/data/finding-row'
import { knownHeads, type KnownHead } from '@/lib/data/known-heads'
import { namesOf } from '@/lib/data/people'
import { shopOf } from '@/lib/data/shop'
import type { Rows } from '@/lib/data/tables'

export type CustomerJob = {
  readonly number: string
  readonly bookedAt: Date
  readonly promiseOn: string | null
  readonly heads: readonly { readonly headId: string; readonly tag: string; readonly whereabouts: Whereabouts | null }[]
  /** Null for those who see no prices. */
  readonly owedMinor: number | null
}

export type CustomerHead = {
  readonly headId: string
  readonly tag: string
  readonly stamp: string
  readonly marks: string
  readonly casting: string
  readonly whereabouts: string | null
  readonly lastJob: string
  /** Whose it was on its last job, when that was somebody else. */
  readonly movedTo: string
}

export type CustomerSaid = {
  readonly id: string
  readonly at: Date
  readonly by: string
  readonly jobNumber: string
  readonly text: string
}

export type CustomerMoney = {
  readonly papers: readonly {
    readonly id: string
    readonly kind: MoneyPaperKind
    readonly number: string
    readonly jobNumber: string
    readonly minor: number
    readonly at: Date
  }[]
  readonly payments: readonly {
    readonly id: string
    readonly at: Date
    readonly jobNumber: string
    readonly kind: Paid['kind']
    readonly method: PaymentMethod
    readonly note: string
    readonly minor: number
    readonly voided: boolean
  }[]
}

export type CustomerView = {
  readonly id: string
  /** Where the record went; the rest is empty then. */
  readonly mergedIntoId: string | null
  readonly version: number
  readonly since: Date
  readonly contact: {
    readonly name: string
    readonly phone: string
    readonly otherPhone: string
    readonly email: string
    readonly address: string
    readonly note: string
    readonly blankedAt: Date | null
  }
  readonly sums: { readonly jobs: number; readonly open: number; readonly owedMinor: number | null }
  readonly jobs: readonly CustomerJob[]
  readonly more: boolean
  readonly heads: readonly CustomerHead[]
  readonly findings: readonly FindingRow[]
  /** Calls and messages, the newest first. */
  readonly said: readonly CustomerSaid[]
  readonly money: CustomerMoney | null
  readonly merges: readonly {
    readonly id: string
    readonly name: string
    readonly phone: string
    readonly at: Date
    readonly by: string
    readonly reason: string
  }[]
  readonly last: LastChange | null
  readonly may: {
    readonly change: boolean
    readonly blank: boolean
    readonly unmerge: boolean
    readonly book: boolean
    readonly estimate: boolean
    readonly ask: boolean
  }
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
}

type CustomerRows = Rows<
  | 'Job'
  | 'Visit'
  | 'VisitPlace'
  | 'Head'
  | 'TagAssignment'
  | 'Finding'
  | 'CallEntry'
  | 'Message'
  | 'Payment'
  | 'PaymentVoid'
>

/** All that a shop knows of one customer: a page of jobs, and what was brought, found, said and paid on them. */
export async function seeCustomer(actor: Actor, id: string, page = 1): Promise<CustomerView> {
  must(allow(actor, 'customer.see'))
  const client = await db()
  const customer = await customerById(client, id)
  const rows = await recordOfCustomer(client, id, page)
  const withAccount = sees(actor, 'account')
  const sums = await sumsOfCustomer(client, id)
  const shop = await shopOf(client)
  const merges = await mergesOf(client, id)
  const known = await knownHeads(client, [...new Set(rows.Visit.map(({ headId }) => headId))])
  const people = await namesOf([...rows.CallEntry, ...rows.Message, ...merges].map(({ byId }) => byId))
  const numberOf = new Map(rows.Job.map((job) => [job.id, job.number]))
  const { name, phone, otherPhone, email, address, note, blankedAt } = customer.contact
  return {
    ...{ id, mergedIntoId: customer.mergedIntoId, version: customer.version, since: customer.createdAt },
    contact: { name, phone, otherPhone, email, address, note, blankedAt },
    sums: { ...sums, owedMinor: withAccount ? sums.owedMinor : null },
    jobs: jobsOf(rows, withAccount),
    more: hasMoreJobs(sums.jobs, page),
    heads: [...known.values()].map((head) => headOf(head, numberOf)),
    findings: findingsOf(rows, numberOf),
    said: saidOf(rows, numberOf, people),
    money: withAccount ? await moneyOf(rows, numberOf) : null,
    merges: merges.map(({ id, at, byId, reason, from }) => ({
      ...{ id, at, by: people.get(byId) ?? '', reason },
      ...{ name: from.contact?.name ?? '', phone: from.contact?.phone ?? '' },
    })),
    last: await lastChange(client, 'customer', id),
    may: {
      change: can(actor, 'customer.change'),
      blank: can(actor, 'customer.blank'),
      unmerge: can(actor, 'customer.unmerge'),
      book: can(actor, 'job.book'),
      estimate: can(actor, 'estimate.keep'),
      ask: can(actor, 'finding.ask'),
    },
    ...{ timeZone: shop.timeZone, locale: shop.locale, currency: shop.currency },
  }
}

const newestFirst = <T extends { readonly at: Date }>(rows: readonly T[]): T[] =>
  rows.toSorted((a, b) => b.at.getTime() - a.at.getTime())

const tagOf = (rows: CustomerRows, headId: string): string =>
  rows.TagAssignment.find((tag) => tag.headId === headId)?.number ?? ''

function jobsOf(rows: CustomerRows, withAccount: boolean): CustomerJob[] {
  const places = new Map(rows.VisitPlace.map(({ visitId, whereabouts }) => [visitId, whereabouts as Whereabouts]))
  return rows.Job.toSorted((a, b) => b.createdAt.getTime() - a.createdAt.getTime()).map((job) => ({
    ...{ number: job.number, bookedAt: job.createdAt, promiseOn: job.promiseOn },
    owedMinor: withAccount ? job.dueMinor : null,
    heads: rows.Visit.filter(({ jobId }) => jobId === job.id)
      .toSorted((a, b) => a.position - b.position)
      .map(({ id, headId }) => ({ headId, tag: tagOf(rows, headId), whereabouts: places.get(id) ?? null })),
  }))
}

/** A head may have come again since, in another's name. */
function headOf({ id, stamp, marks, casting, tags, visit }: KnownHead, own: ReadonlyMap<string, string>): CustomerHead {
  const isOwn = visit !== null && [...own.values()].includes(visit.jobNumber)
  return {
    ...{ headId: id, tag: tags[0]?.number ?? '', stamp, marks, casting },
    ...{ whereabouts: visit?.whereabouts ?? null, lastJob: visit?.jobNumber ?? '' },
    movedTo: isOwn ? '' : (visit?.customer ?? ''),
  }
}

function findingsOf(rows: CustomerRows, numberOf: ReadonlyMap<string, string>): FindingRow[] {
  const visits = new Map(rows.Visit.map((visit) => [visit.id, visit]))
  const found = rows.Finding.map((finding) => {
    const { headId = '', jobId = '' } = visits.get(finding.visitId) ?? {}
    return findingRow(finding, { tag: tagOf(rows, headId), headId, jobNumber: numberOf.get(jobId) ?? '' })
  })
  return found.toSorted((a, b) => b.reportedAt.getTime() - a.reportedAt.getTime())
}

function saidOf(
  rows: CustomerRows,
  numberOf: ReadonlyMap<string, string>,
  people: ReadonlyMap<string, string>,
): CustomerSaid[] {
  const line = ({ id, jobId, at, byId }: { id: string; jobId: string; at: Date; byId: string }, text: string) => ({
    ...{ id, at, text, by: people.get(byId) ?? '', jobNumber: numberOf.get(jobId) ?? '' },
  })
  const calls = rows.CallEntry.map((call) => line(call, call.text))
  const messages = rows.Message.map((message) =>
    line(message, message.blankedAt ? 'Message (text removed)' : `Message: ${message.subject}`),
  )
  return newestFirst([...calls, ...messages])
}

async function moneyOf(rows: CustomerRows, numberOf: ReadonlyMap<string, string>): Promise<CustomerMoney> {
  const papers = await papersOfJobs(await db(), [...numberOf.keys()])
  const voided = new Set(rows.PaymentVoid.map(({ paymentId }) => paymentId))
  const taken = new Map(rows.Payment.map(({ id, minor }) => [id, minor]))
  return {
    papers: papers.map(({ id, kind, number, jobId, paymentId, totalMinor, at }) => ({
      ...{ id, kind: kind as MoneyPaperKind, number, jobNumber: numberOf.get(jobId) ?? '', at },
      // A receipt is for its payment; its total is the job's.
      minor: taken.get(paymentId ?? '') ?? totalMinor,
    })),
    payments: newestFirst(rows.Payment).map(({ id, at, jobId, kind, method, how, minor }) => ({
      ...{ id, at, jobNumber: numberOf.get(jobId) ?? '', kind: kind as Paid['kind'], method: method as PaymentMethod },
      ...{ note: how, minor: kind === 'refund' ? -minor : minor, voided: voided.has(id) },
    })),
  }
}
