import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { parseTag, type TagNumber } from '@/lib/core/shop/tag-number'
import { assignTag } from '@/lib/data/tags'
import { write, type Moment } from '@/lib/data/write'
import type { changeTagSchema } from '@/lib/schemas/tag'
import { lockHead } from './lock-head'

/** Puts another number on a head whose tag was lost or is used again. The number it wore still finds it. */
export async function changeTag(
  actor: Actor,
  input: z.output<typeof changeTagSchema>,
  moment: Moment,
): Promise<{ readonly tag: string }> {
  must(allow(actor, 'head.tag'))
  return write(actor, moment, async (ctx) => {
    const { worn } = await lockHead(ctx, input)
    const typed = input.number === '' ? null : typedTag(input.number)
    if (typed && typed.number === worn) {
      const message = `This head already has tag ${worn}.`
      throw new RefusedError({ code: 'invalid', message, fields: { number: message } })
    }
    const tag = await assignTag(ctx, input.headId, typed, 'number', { another: true })
    ctx.audit({
      action: 'head.tag',
      subjectId: input.headId,
      changes: { was: worn, now: tag, reason: input.reason },
    })
    return { tag }
  })
}

function typedTag(text: string): TagNumber {
  const parsed = parseTag(text)
  if (parsed.ok) return parsed.value
  throw new RefusedError({ ...parsed.refusal, fields: { number: parsed.refusal.message } })
}
