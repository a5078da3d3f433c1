import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { linksOfJob } from '@/lib/data/links'
import { paperJob } from '@/lib/data/papers'
import { namesOf } from '@/lib/data/people'
import { shopAddress } from '@/lib/data/shop-address'

export type LinkRow = {
  readonly id: string
  readonly madeAt: Date
  readonly by: string
  readonly expiresAt: Date
  readonly state: 'open' | 'revoked' | 'run out'
}

/** The links of a job: when, by whom, and whether they still open. Never where they lead: that is not known here. */
export async function seeLinks(actor: Actor, number: string, now: Date) {
  must(allow(actor, 'customer-link.make'))
  const client = await db()
  const job = await paperJob(client, number)
  const links = await linksOfJob(client, job.id)
  const names = await namesOf(links.map((link) => link.byId))
  return {
    jobId: job.id,
    number: job.number,
    customer: job.customer.contact?.name ?? '',
    address: shopAddress(),
    links: links.map((link): LinkRow => ({
      id: link.id,
      madeAt: link.createdAt,
      by: names.get(link.byId) ?? '',
      expiresAt: link.expiresAt,
      state: stateOf(link, now),
    })),
  }
}

function stateOf(link: { revokedAt: Date | null; expiresAt: Date }, now: Date): LinkRow['state'] {
  if (link.revokedAt !== null) return 'revoked'
  return link.expiresAt > now ? 'open' : 'run out'
}
