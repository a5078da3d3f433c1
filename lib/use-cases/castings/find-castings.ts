import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { pickAsked } from '@/lib/core/find/pick'
import { castingPicks, type CastingPick } from '@/lib/data/castings-read'
import { db } from '@/lib/data/db'

export type { CastingPick }

/** Castings in use whose names hold what is typed, at booking and on the cut bench. */
export async function findCastings(actor: Actor, input: { q: string }): Promise<readonly CastingPick[]> {
  must(allow(actor, 'casting.see'))
  return (await castingPicks(await db(), pickAsked(input.q))).rows
}
