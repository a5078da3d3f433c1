import { RefusedError } from '@/lib/core/errors'
import { conflictUnless, type Write } from '@/lib/data/write'

/** Takes the head's lock version forward, refused when somebody changed it meanwhile; the tag that it wears, if any. */
export async function lockHead(ctx: Write, { headId, version }: { headId: string; version: number }) {
  const head = await ctx.tx.head.findUnique({
    where: { id: headId },
    select: { tags: { where: { to: null }, select: { number: true } } },
  })
  if (!head) throw new RefusedError({ code: 'not-found', message: 'There is no such head here.' })
  const changed = await ctx.tx.head.updateMany({
    where: { id: headId, version },
    data: { version: { increment: 1 } },
  })
  conflictUnless(changed, 'this head')
  return { worn: head.tags[0]?.number ?? null }
}
