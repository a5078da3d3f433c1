import { vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { changeMailServerSchema, sendMessageSchema, type ChangeMailServerForm } from '@/lib/schemas/message'
import { changeMailServer } from '@/lib/use-cases/messages/change-mail-server'
import { seeMailServer } from '@/lib/use-cases/messages/see-mail-server'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { sendMessage } from '@/lib/use-cases/messages/send-message'
import { mailPassword, mailUser } from './mail-server'
import type { TestDatabase } from './database'

const owner: Actor = { personId: 'p-owner', name: 'Greta Sund', roles: ['owner'], grants: [] }
const counter: Actor = { personId: 'p-counter', name: 'Odile Marsh', roles: ['counter'], grants: [] }

export const shopAddress = 'https://heads.example'

/** What the server needs to know of itself to seal and to make links. */
export function mailEnvironment(): void {
  vi.stubEnv('NEXTAUTH_SECRET', 'only for these tests, long enough')
  vi.stubEnv('BRASSTAG_URL', shopAddress)
}

export async function enterServer(port: number, now: Date, over: Partial<ChangeMailServerForm> = {}): Promise<void> {
  const { server } = await seeMailServer(owner)
  const typed = {
    ...{ host: 'localhost', port: String(port), security: 'starttls', user: mailUser, password: mailPassword },
    ...{ fromAddress: mailUser, replyTo: '', version: server.version },
    ...over,
  }
  await changeMailServer(owner, changeMailServerSchema.parse(typed), { now })
}

/** Stores the first text of a job as it stands. */
export async function sendFirst(number: string, now: Date): Promise<string> {
  const { texts, jobId } = await seeMessages(counter, number)
  return (await sendMessage(counter, sendMessageSchema.parse({ ...texts[0], jobId }), { now })).messageId
}

/** All that is kept of messages, as text: to look for what must not be there. */
export async function keptOfMail({ client }: TestDatabase): Promise<string> {
  const tables = ['message', 'outboxMail', 'mailServer', 'operation', 'auditEntry', 'customerLink'] as const
  const rows = await Promise.all(
    tables.map((table) => (client[table] as { findMany: () => Promise<unknown[]> }).findMany()),
  )
  return JSON.stringify(rows)
}
