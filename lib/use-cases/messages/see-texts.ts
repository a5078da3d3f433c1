import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { messageKinds, type MessageKind } from '@/lib/core/messages/kinds'
import { changesOf } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { isServerSet, mailServerRow } from '@/lib/data/mail/server'
import { messageTexts } from '@/lib/data/messages'
import { shopOf } from '@/lib/data/shop'
import { wordingOf } from '@/lib/dossier/messages/job-texts'
import { auditText } from '@/lib/words/audit'

export type TextSeen = {
  readonly kind: MessageKind
  readonly subject: string
  readonly body: string
  readonly byItself: boolean
  /** 0: it is the one that comes with the app. */
  readonly version: number
}

export type TextsView = { readonly texts: readonly TextSeen[]; readonly hasServer: boolean }

/** Every prepared text as the shop words it now. */
export async function seeTexts(actor: Actor): Promise<TextsView> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const own = new Map((await messageTexts(client)).map((row) => [row.kind, row]))
  return {
    hasServer: isServerSet(await mailServerRow(client)),
    texts: messageKinds.map((kind) => {
      const row = own.get(kind)
      return { kind, ...wordingOf(kind, row), byItself: row?.byItself ?? false, version: row?.version ?? 0 }
    }),
  }
}

/** When a text was changed, by whom, and what: in words. */
export type TextHistory = readonly {
  readonly seq: number
  readonly by: string
  readonly at: Date
  readonly changes: readonly string[]
}[]

export type TextView = { readonly text: TextSeen; readonly hasServer: boolean; readonly history: TextHistory }

/** One text and its newest changes, with who made them. */
export async function seeText(actor: Actor, kind: MessageKind): Promise<TextView> {
  const { texts, hasServer } = await seeTexts(actor)
  const text = texts.find((one) => one.kind === kind)
  if (!text) throw new RefusedError({ code: 'not-found', message: 'There is no such text.' })
  const client = await db()
  const { timeZone, locale, currency } = await shopOf(client)
  const manner = { timeZone, locale, currency, stepName: () => '' }
  const history = (await changesOf(client, 'message-text', kind)).map(({ changes, ...entry }) => ({
    ...entry,
    changes: auditText('message-text.change', '', changes, manner).changes,
  }))
  return { text, hasServer, history }
}
