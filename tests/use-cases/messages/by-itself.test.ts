import { beforeAll, beforeEach, expect, it, vi } from 'vitest'
import { messageKinds, type MessageKind } from '@/lib/core/messages/kinds'
import { askFindingSchema } from '@/lib/schemas/finding'
import { changeJobSchema } from '@/lib/schemas/job'
import { changeTextSchema } from '@/lib/schemas/message'
import { handOverSchema } from '@/lib/schemas/release'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { changeJob } from '@/lib/use-cases/jobs/change-job'
import { changeText } from '@/lib/use-cases/messages/change-text'
import { callInstead, tryMailAgain } from '@/lib/use-cases/messages/mail-deeds'
import { seeMailTrouble } from '@/lib/use-cases/messages/see-mail-trouble'
import { seeText } from '@/lib/use-cases/messages/see-texts'
import { sendQueued } from '@/lib/use-cases/messages/send-queued'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { certificate, startMailServer, type MailServer } from '@/tests/setup/mail-server'
import { enterServer, mailEnvironment } from '@/tests/setup/mail-shop'
import { at, book, counter, machinist, monday, owner } from '../jobs/counter-shop'
import { shopReadyToRelease, versionOf } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 240_000 })

let server: MailServer
beforeAll(async () => {
  server = await startMailServer()
})
beforeEach(() => {
  mailEnvironment()
  server.got.splice(0)
})

type Shop = Awaited<ReturnType<typeof shopReadyToRelease>>

async function shopWithServer(): Promise<Shop> {
  const shop = await shopReadyToRelease()
  await shop.database.client.customerContact.updateMany({ data: { email: 'tamsin@example.com' } })
  await enterServer(server.port, monday)
  return shop
}

async function turnOn(kind: MessageKind): Promise<void> {
  const { text } = await seeText(owner, kind)
  await changeText(owner, changeTextSchema.parse({ ...text, byItself: true }), at(monday))
}

const customer = (email: string) => ({ id: '', name: 'Wren Calloway', phone: '', email, address: '' })

/** From a booking to the customer's hands, with a question and a new date on the way; which texts were stored. */
async function driveThrough({ database, job, first, second }: Shop): Promise<readonly string[]> {
  const booked = await book({ customer: customer('wren@example.com') })
  await book({ customer: customer('') })
  const visitId = booked.heads[0]?.visitId ?? ''
  const { findingId } = await reportFinding(machinist, { visitId, stepId: null, what: 'bent guide' }, at(monday))
  const terms = { findingId, tax: '0', addsWork: [], how: 'by phone' }
  // No price yet: there is nothing to answer. Then the price, and the same once more: one question.
  await askFinding(counter, askFindingSchema.parse({ ...terms, version: 1, price: '' }), at(monday))
  await askFinding(counter, askFindingSchema.parse({ ...terms, version: 2, price: '40' }), at(monday))
  await askFinding(counter, askFindingSchema.parse({ ...terms, version: 3, price: '40' }), at(monday))
  const change = {
    jobId: booked.jobId,
    version: 1,
    urgent: false,
    note: '',
    partsPlace: '',
    reason: 'late',
    visits: [],
  }
  await changeJob(counter, changeJobSchema.parse({ ...change, promiseOn: '2026-03-27' }), at(monday))
  await changeJob(
    counter,
    changeJobSchema.parse({ ...change, version: 2, promiseOn: '2026-03-27', note: 'x' }),
    at(monday),
  )
  await returnAsIs(counter, { visitId: second.visitId, reason: 'pulled' }, at(monday))
  const version = await versionOf(first.visitId)
  await releaseVisit(owner, { visitId: first.visitId, version, reason: '' }, at(monday))
  const heads = [first, second].map((head) => ({ visitId: head.visitId, side: 'left', partsBack: '' }))
  const payment = { amount: '191.00', method: 'card', how: '', confirmed: false }
  const given = { jobId: job.jobId, takenBy: 'Tamsin Rook', note: '', heads, payment }
  await handOver(counter, handOverSchema.parse(given), at(monday))
  await sendQueued({ worker: 'w', now: () => monday, limits: { authority: certificate.cert } })
  const stored = await database.client.message.findMany({ orderBy: { id: 'asc' } })
  expect(stored.every(({ byItself }) => byItself)).toBe(true)
  return stored.map(({ kind, toAddress }) => `${kind} ${toAddress}`)
}

it('a whole job goes through without a mail, while no text is turned on', async () => {
  expect(await driveThrough(await shopWithServer())).toEqual([])
  expect(server.got).toEqual([])
  expect(server.logins).toEqual([])
})

it('each text that is turned on goes out once, with the deed it tells of, and says that nobody wrote it', async () => {
  const shop = await shopWithServer()
  for (const kind of messageKinds) await turnOn(kind)
  expect(await driveThrough(shop)).toEqual([
    'booked wren@example.com',
    'booked ',
    'question wren@example.com',
    'date-changed wren@example.com',
    'spec-sheet tamsin@example.com',
    'ready tamsin@example.com',
  ])
  expect(server.got.map(({ mail }) => mail.headers.get('auto-submitted'))).toEqual(Array(5).fill('auto-generated'))
  expect(server.got[1]?.mail.text).toContain('Price to put it right: $40.00.')
})

it('one that is turned on alone goes out alone', async () => {
  const shop = await shopWithServer()
  await turnOn('ready')
  expect(await driveThrough(shop)).toEqual(['ready tamsin@example.com'])
})

it('one for a customer without a mail address is not sent, and stands at the counter until the customer is called or has one', async () => {
  const { database } = await shopWithServer()
  await turnOn('booked')
  const [first, second] = [await book({ customer: customer('') }), await book({ customer: customer('') })]
  const send = () => sendQueued({ worker: 'w', now: () => monday, limits: { authority: certificate.cert } })
  await send()
  expect(server.got).toEqual([])
  const seen = await seeMailTrouble(counter)
  expect(seen).toMatchObject([
    { jobNumber: first.number, customer: 'Wren Calloway', fault: 'no-address', isFailed: true },
    { jobNumber: second.number, fault: 'no-address' },
  ])
  const [here, there] = seen.map(({ messageId }) => ({ messageId }))
  await expect(tryMailAgain(counter, here ?? { messageId: '' }, at(monday))).rejects.toThrow('no mail address')
  await callInstead(counter, here ?? { messageId: '' }, at(monday))
  await database.client.customerContact.updateMany({ data: { email: 'wren@example.com' } })
  await tryMailAgain(counter, there ?? { messageId: '' }, at(monday))
  await send()
  expect(server.got.map(({ to }) => to)).toEqual([['wren@example.com']])
  expect(await seeMailTrouble(counter)).toEqual([])
})
