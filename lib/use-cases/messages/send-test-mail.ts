import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import { newId } from '@/lib/data/ids'
import { serverOf } from '@/lib/data/mail/server'
import { deliver } from '@/lib/data/mail/transport'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'
import type { TestMail } from '@/lib/schemas/message'
import { mailFaultWords } from '@/lib/words/messages'

/** Sends one mail at once by the settings as they are saved, and says in words how that went. */
export async function sendTestMail(actor: Actor, { to }: TestMail, moment: Moment): Promise<{ to: string }> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const { name } = await shopOf(client)
  const server = await serverOf(client, name)
  if (typeof server === 'string') throw new RefusedError({ code: 'wrong-state', message: mailFaultWords[server] })
  const domain = server.fromAddress.split('@').at(-1) ?? 'localhost'
  const sent = await deliver(server, {
    ...{ mailId: `<${newId(moment.now)}@${domain}>`, at: moment.now, byItself: false },
    ...{ toName: '', toAddress: to, subject: `${name}: test mail` },
    text: `This is a test mail from ${name}.\n\nIf you can read it, mails to customers can be sent.\n`,
  })
  await write(actor, moment, async (ctx) => {
    ctx.audit({ action: 'mail-server.test', subjectId: '1', changes: sent.ok ? {} : { fault: sent.fault } })
  })
  if (sent.ok) return { to }
  const said = sent.answer === '' ? '' : ` The server said: ${sent.answer}`
  throw new RefusedError({ code: 'failed', message: `${mailFaultWords[sent.fault]}${said}` })
}
