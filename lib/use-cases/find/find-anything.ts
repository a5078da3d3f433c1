import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { customersLike } from '@/lib/data/customers'
import { db, type Db } from '@/lib/data/db'
import { jobsFound } from '@/lib/data/jobs-found'
import { headsLike, headsWithTag } from '@/lib/data/known-heads'
import { headHit, jobHit, type Hit } from './hits'

export type Found = {
  /** Where Enter goes at once: what was typed or scanned is exactly one thing's own name. */
  readonly jump: string | null
  /** The head that this is, when it is one. */
  readonly headId: string | null
  readonly hits: readonly Hit[]
}

const atMost = 10

/** Whatever was typed or scanned into the one box: tag or its link, job, customer, phone, stamp or casting marks. */
export async function findAnything(actor: Actor, input: { q: string }): Promise<Found> {
  must(allow(actor, 'job.see'))
  const q = input.q.trim()
  if (q === '') return { jump: null, headId: null, hits: [] }
  const client = await db()
  const tagged = (await headsWithTag(client, q, atMost)).map(headHit)
  const wearer = tagged.find((hit) => hit.worn) ?? (tagged.length === 1 ? tagged[0] : undefined)
  const headId = wearer?.headId ?? null
  if (q.length < 2) return { jump: wearer?.href ?? null, headId, hits: tagged }
  const jobs = await jobsLike(client, q)
  const marked = (await headsLike(client, q, atMost)).map(headHit)
  const exact = jobs.find((job) => job.kind === 'job' && job.number === q)
  return {
    jump: wearer?.href ?? exact?.href ?? null,
    headId,
    hits: distinct([...tagged, ...jobs, ...marked]).slice(0, 2 * atMost),
  }
}

async function jobsLike(client: Db, q: string): Promise<Hit[]> {
  const customers = await customersLike(client, q, atMost)
  const customerIds = customers.map((customer) => customer.customerId)
  return (await jobsFound(client, { customerIds, number: q }, atMost)).map(jobHit)
}

const distinct = (hits: readonly Hit[]): Hit[] => [...new Map(hits.map((hit) => [hit.href, hit])).values()]
