import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { headsLike, headsWithTag } from '@/lib/data/known-heads'
import { headHit, type HeadHit } from './hits'

const atMost = 8

/** Heads that were here before, by tag, stamp or casting marks, as it is typed at booking. */
export async function findHeads(actor: Actor, input: { q: string }): Promise<HeadHit[]> {
  must(allow(actor, 'job.see'))
  if (input.q.trim().length < 2) return []
  const client = await db()
  const byTag = await headsWithTag(client, input.q, atMost)
  return (byTag.length > 0 ? byTag : await headsLike(client, input.q, atMost)).map(headHit)
}
