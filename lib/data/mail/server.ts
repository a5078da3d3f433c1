import 'server-only'
import type { Reader } from '../db'
import { seal, unseal } from '../sealed'
import type { Row } from '../tables'

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
