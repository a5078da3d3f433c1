import { mkdtempSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, inject, it } from 'vitest'
import { makeBackup } from '@/lib/cli/backup/make-backup'
import { restoreBackup } from '@/lib/cli/backup/restore-backup'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { callInstead, tryMailAgain } from '@/lib/use-cases/messages/mail-deeds'
import { seeMailTrouble } from '@/lib/use-cases/messages/see-mail-trouble'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { sendQueued } from '@/lib/use-cases/messages/send-queued'
import { testDatabase } from '@/tests/setup/database'
import { certificate, startMailServer, type MailServer } from '@/tests/setup/mail-server'
import { enterServer, mailEnvironment, sendFirst } from '@/tests/setup/mail-shop'
import { workIn } from '@/tests/setup/restored-shop'
import { at, book, counter, monday, openShop, owner } from '../jobs/counter-shop'

const customer = { id: '', name: 'Wren Calloway', phone: '', email: 'wren@example.com', address: '' }
const later = (minutes: number) => new Date(monday.getTime() + minutes * 60_000)
const sendAt = (now: Date) =>
  sendQueued({ worker: 'the worker', now: () => now, limits: { authority: certificate.cert, waitMs: 2000 } })

let server: MailServer
let number: string
const waiting: string[] = []

beforeAll(async () => {
  mailEnvironment()
  server = await startMailServer()
  const database = await testDatabase()
  await openShop(database)
  await enterServer(server.port, monday)
  number = (await book({ customer })).number
  await sendFirst(number, monday)
  expect(await sendAt(monday)).toBe(1)
  waiting.push(await sendFirst(number, later(1)), await sendFirst(number, later(2)))
  const { path } = await makeBackup({
    url: database.url,
    data: database.folder,
    kind: 'nightly',
    nowMs: later(3).getTime(),
  })
  expect(await sendAt(later(4))).toBe(2) // they leave after the backup was made: the customer has them
  const data = mkdtempSync(join(inject('runFolder'), 'restored-'))
  expect(await restoreBackup({ path, data, nowMs: later(60).getTime() })).toMatchObject({ heldMails: 2 })
  await workIn(data)
}, 60_000)

it('nothing that waited when the backup was made leaves by itself, and the counter is told why', async () => {
  expect(server.got).toHaveLength(3)
  for (const hours of [1, 2, 24, 48]) expect(await sendAt(later(60 * hours))).toBe(0)
  expect(server.got).toHaveLength(3)
  const trouble = await seeMailTrouble(counter)
  expect(trouble.map(({ messageId, fault, isFailed }) => [messageId, fault, isFailed])).toEqual(
    waiting.map((id) => [id, 'restored', true]),
  )
  const { lines } = await seeTrail(owner, { find: number, before: null })
  const held = lines.filter(({ sentence }) => sentence.startsWith('Held a mail back'))
  expect(held.map(({ by }) => by)).toEqual(Array(2).fill('a command at the shop’s computer'))
})

it('a person lets one go, with a link that still opens, and says of the other that they called', async () => {
  const [first = '', second = ''] = waiting
  await tryMailAgain(counter, { messageId: first }, at(later(90)))
  await callInstead(counter, { messageId: second }, at(later(90)))
  expect(await sendAt(later(90))).toBe(1)
  expect(server.got).toHaveLength(4)
  expect(server.got[3]?.mail.text).toMatch(/https:\/\/heads\.example\/s\/[\w-]{32}/)
  expect(await seeMailTrouble(counter)).toEqual([])
  const { messages } = await seeMessages(counter, number)
  expect(messages.map(({ mail }) => mail?.state)).toEqual(['called', 'sent', 'sent'])
})
