import 'server-only'
import type { MailFault } from '@/lib/core/messages/mail-fault'
import type { Reader } from '../db'
import { seal, unseal } from '../sealed'
import type { Row } from '../tables'
import type { Server } from './transport'

const passwordPurpose = 'password of the mail server'

export const sealPassword = (password: string): string => (password === '' ? '' : seal(password, passwordPurpose))

/** '' when there is none, null when it can no longer be read. */
export const passwordOf = ({ sealedPassword }: Pick<Row<'MailServer'>, 'sealedPassword'>): string | null =>
  sealedPassword === '' ? '' : unseal(sealedPassword, passwordPurpose)

/** The row as it stands, with what was sealed in it; null: nothing was entered yet. */
export const mailServerRow = (reader: Reader): Promise<Row<'MailServer'> | null> =>
  reader.mailServer.findUnique({ where: { id: 1 } })

/** Whether the shop sends mail by itself at all. */
export const isServerSet = (row: Row<'MailServer'> | null): row is Row<'MailServer'> => row !== null && row.host !== ''

/** The server ready to be used, or why there is none. `fromName`: the shop's name, which mails come from. */
export async function serverOf(reader: Reader, fromName: string): Promise<Server | MailFault> {
  const row = await mailServerRow(reader)
  if (!isServerSet(row)) return 'no-server'
  const password = passwordOf(row)
  if (password === null) return 'unreadable-password'
  const { host, port, security, user, fromAddress, replyTo } = row
  return { host, port, security, user, password, fromName, fromAddress, replyTo }
}
