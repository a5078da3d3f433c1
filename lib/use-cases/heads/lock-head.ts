import { wornTag } from '@/lib/data/tags'
import { conflictUnless, type Write } from '@/lib/data/write'

/** Takes the head's lock version forward, refused when somebody changed it meanwhile; the tag that it wears, if any. */
export async function lockHead(ctx: Write, { headId, version }: { headId: string; version: number }) {
  const worn = await wornTag(ctx.tx, headId)
  const changed = await ctx.tx.head.updateMany({
    where: { id: headId, version },
    data: { version: { increment: 1 } },
  })
  conflictUnless(changed, 'this head')
  return { worn }
}
