import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { isServerSet, mailServerRow } from '@/lib/data/mail/server'
import { messageTextOf } from '@/lib/data/messages'
import { conflictUnless, write, type Moment, type Write } from '@/lib/data/write'
import { wordingOf } from '@/lib/dossier/messages/job-texts'
import type { ChangeText } from '@/lib/schemas/message'

/** Words a prepared text anew, and says whether it goes out by itself. Texts that were sent stay as they were. */
export async function changeText(actor: Actor, input: ChangeText, moment: Moment): Promise<{ kind: string }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { kind, version, ...after } = input
    if (after.byItself) await refuseWithoutServer(ctx)
    const row = await messageTextOf(ctx.tx, kind)
    const before = { ...wordingOf(kind, row), byItself: row?.byItself ?? false }
    const changes = changesBetween(before, after)
    if (Object.keys(changes).length === 0) {
      throw new RefusedError({ code: 'wrong-state', message: 'Nothing changed. The text reads like this already.' })
    }
    if (row) {
      const changed = await ctx.tx.messageText.updateMany({
        where: { kind, version },
        data: { ...after, version: { increment: 1 } },
      })
      conflictUnless(changed, 'this text')
    } else {
      conflictUnless({ count: version === 0 ? 1 : 0 }, 'this text')
      await ctx.tx.messageText.create({ data: { kind, ...after } })
    }
    ctx.audit({ action: 'message-text.change', subjectId: kind, changes: { kind, ...changes } })
    return { kind }
  })
}

async function refuseWithoutServer(ctx: Write): Promise<void> {
  if (isServerSet(await mailServerRow(ctx.tx))) return
  const message = 'A text can only go out by itself over the shop’s mail server. Enter the mail server first.'
  throw new RefusedError({ code: 'wrong-state', message, fields: { byItself: message } })
}
