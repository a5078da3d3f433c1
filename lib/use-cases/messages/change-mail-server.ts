import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { mailServerRow, sealPassword } from '@/lib/data/mail/server'
import { secretOperation } from '@/lib/data/secret-operation'
import type { Row } from '@/lib/data/tables'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeMailServer } from '@/lib/schemas/message'

/** The shop's mail server, or none (host left empty). The trail says that the password changed, never to what. */
export async function changeMailServer(
  actor: Actor,
  input: ChangeMailServer,
  moment: Moment,
): Promise<{ isSet: boolean }> {
  must(allow(actor, 'settings.change'))
  refuseIncomplete(input)
  return write(actor, secretOperation(moment), async (ctx) => {
    const row = await mailServerRow(ctx.tx)
    const { version, password, ...after } = input
    conflictUnless({ count: (row?.version ?? 0) === version ? 1 : 0 }, 'the mail settings')
    refuseOldPassword(row, input)
    const sealedPassword = sealedOf(row, input)
    const changes = {
      ...changesBetween(row ?? {}, after),
      ...(password === '' ? {} : { password: 'changed' }),
    }
    const data = { ...after, sealedPassword }
    await ctx.tx.mailServer.upsert({
      where: { id: 1 },
      create: { id: 1, ...data },
      update: { ...data, version: { increment: 1 } },
    })
    ctx.audit({ action: 'mail-server.change', subjectId: '1', changes })
    return { isSet: after.host !== '' }
  })
}

const refused = (field: string, message: string): RefusedError =>
  new RefusedError({ code: 'invalid', message, fields: { [field]: message } })

function refuseIncomplete({ host, fromAddress, security, user, password }: ChangeMailServer): void {
  if (host === '') return
  if (fromAddress === '') throw refused('fromAddress', 'Enter the address that mails come from.')
  if (security === 'none' && (user !== '' || password !== '')) {
    throw refused('security', 'Without encryption anyone on the way can read the password. Choose TLS or STARTTLS.')
  }
}

/** Whoever points the settings at another server must know the password: the stored one is sent to no new place. */
function refuseOldPassword(row: Row<'MailServer'> | null, input: ChangeMailServer): void {
  const isKept = row !== null && row.sealedPassword !== '' && input.password === '' && input.user !== ''
  if (!isKept || input.host === '') return
  const moved = (['host', 'port', 'security', 'user'] as const).some((field) => row[field] !== input[field])
  if (moved) throw refused('password', 'Enter the password again: the server or the name changed.')
}

function sealedOf(row: Row<'MailServer'> | null, { host, user, password }: ChangeMailServer): string {
  if (host === '' || user === '') return ''
  return password === '' ? (row?.sealedPassword ?? '') : sealPassword(password)
}
