import { db } from '@/lib/data/db'
import type { Actor } from '@/lib/core/access/roles'
import { sendMessageSchema } from '@/lib/schemas/message'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { sendMessage } from '@/lib/use-cases/messages/send-message'
import { sendQueued } from '@/lib/use-cases/messages/send-queued'

/**
 * A process of the shop that is killed at work. Run with what it does (`store`: a mail for a job, and dies before it is
 * sent; `send`: what is in the outbox), the number of the job, a certificate to believe and the time it is.
 */
const [deed = '', number = '', authority = '', time = ''] = process.argv.slice(2)
const actor: Actor = { personId: 'p-counter', name: 'Odile Marsh', roles: ['counter'], grants: [] }
const now = new Date(time)

await db()
if (deed === 'store') {
  const { texts, jobId } = await seeMessages(actor, number)
  await sendMessage(actor, sendMessageSchema.parse({ ...texts[0], jobId }), { now })
} else {
  await sendQueued({ worker: 'the one that dies', now: () => now, limits: { authority } })
}
process.kill(process.pid, 'SIGKILL')
