import type { Actor } from '@/lib/core/access/roles'
import { allow, can } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { jobNumbersAsked } from '@/lib/core/find/job-asked'
import { customersLike } from '@/lib/data/customers'
import { db } from '@/lib/data/db'
import { jobsFound } from '@/lib/data/jobs-found'
import { headsLike, headsWithTag } from '@/lib/data/known-heads'
import { shopOf } from '@/lib/data/shop'
import { customerHit, headHit, jobHit, type Hit } from './hits'

export type Found = {
  /** Where Enter goes at once: what was typed or scanned is exactly one thing's own name. */
  readonly jump: string | null
  /** The head that this is, when it is one. */
  readonly headId: string | null
  readonly hits: readonly Hit[]
  /** How the shop writes days. */
  readonly locale: string
}

const atMost = 10

/** Whatever was typed or scanned into the one box: tag or its link, job, customer, phone, stamp, casting or its marks. */
export async function findAnything(actor: Actor, input: { q: string }): Promise<Found> {
  must(allow(actor, 'job.see'))
  const q = input.q.trim()
  const client = await db()
  const { locale } = await shopOf(client)
  if (q === '') return { jump: null, headId: null, hits: [], locale }
  const tagged = (await headsWithTag(client, q, atMost)).map(headHit)
  const wearer = tagged.find((hit) => hit.worn) ?? (tagged.length === 1 ? tagged[0] : undefined)
  const headId = wearer?.headId ?? null
  if (q.length < 2) return { jump: wearer?.href ?? null, headId, hits: tagged, locale }
  const customers = await customersLike(client, q, atMost)
  const asked = { customerIds: customers.map(({ customerId }) => customerId), numbers: jobNumbersAsked(q), begins: q }
  const jobs = (await jobsFound(client, asked, atMost)).map(jobHit)
  const marked = (await headsLike(client, q, atMost)).map(headHit)
  const whole = jobs.find((job) => job.number === q || (q.includes('-') && asked.numbers.includes(job.number)))
  const people = can(actor, 'customer.see') ? customers.slice(0, mostPeople).map(customerHit) : []
  return {
    jump: wearer?.href ?? whole?.href ?? null,
    headId,
    hits: distinct([...tagged, ...people, ...jobs, ...marked]).slice(0, 2 * atMost + mostPeople),
    locale,
  }
}

/** Their jobs stand below them. */
const mostPeople = 5

const distinct = (hits: readonly Hit[]): Hit[] => [...new Map(hits.map((hit) => [hit.href, hit])).values()]
