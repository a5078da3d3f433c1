import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { mailServerRow, passwordOf } from '@/lib/data/mail/server'

/** The mail settings without the password, which is never shown again. */
export type MailServerSeen = {
  readonly host: string
  readonly port: number
  readonly security: 'tls' | 'starttls' | 'none'
  readonly user: string
  readonly password: 'set' | 'none' | 'unreadable'
  readonly fromAddress: string
  readonly replyTo: string
  /** 0: nothing was entered yet. */
  readonly version: number
}

const nothingYet: MailServerSeen = {
  ...{ host: '', port: 587, security: 'starttls', user: '', password: 'none', fromAddress: '', replyTo: '' },
  version: 0,
}

export async function seeMailServer(
  actor: Actor,
): Promise<{ readonly server: MailServerSeen; readonly last: LastChange | null }> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const row = await mailServerRow(client)
  const last = await lastChange(client, 'mail-server', '1')
  if (!row) return { server: nothingYet, last }
  const { host, port, user, fromAddress, replyTo, version } = row
  const password = row.sealedPassword === '' ? 'none' : passwordOf(row) === null ? 'unreadable' : 'set'
  const security = row.security as MailServerSeen['security']
  return { server: { host, port, security, user, password, fromAddress, replyTo, version }, last }
}
