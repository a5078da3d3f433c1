import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { parseTag } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { visitIdOfTag } from '@/lib/data/visits'

/** The head that wears a tag, or wore it last; null: no head ever did. */
export async function headOfTag(actor: Actor, typed: string): Promise<string | null> {
  must(allow(actor, 'job.see'))
  const tag = parseTag(typed)
  return tag.ok ? ((await visitIdOfTag(await db(), tag.value.number))?.headId ?? null) : null
}
