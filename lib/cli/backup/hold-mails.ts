import { closeClient, openClient } from '@/lib/data/client'
import { holdBackMails } from '@/lib/data/mail/outbox'
import { writeTo } from '@/lib/data/write'

/** The mails that were waiting in a restored database wait for a person now. How many. */
export async function holdMails(url: string, now: Date): Promise<number> {
  const client = await openClient(url)
  try {
    const waiting = await client.outboxMail.count({ where: { state: 'queued' } })
    if (waiting > 0) await writeTo(client, { service: 'console' }, { now }, holdBackMails)
    return waiting
  } finally {
    await closeClient(url)
  }
}
