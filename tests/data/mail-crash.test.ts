import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { beforeAll, expect, it, vi } from 'vitest'
import { leaseMs } from '@/lib/data/mail/outbox'
import { closeClient, openClient } from '@/lib/data/client'
import { sendQueued } from '@/lib/use-cases/messages/send-queued'
import { startMailWorker } from '@/lib/web/mail-worker'
import { testDatabase, type TestDatabase } from '../setup/database'
import { bundled } from '../setup/bundled'
import { certificate, startMailServer, type MailServer } from '../setup/mail-server'
import { enterServer, mailEnvironment, sendFirst } from '../setup/mail-shop'
import { book, monday, openShop } from '../use-cases/jobs/counter-shop'

const root = join(import.meta.dirname, '..', '..')
const customer = { id: '', name: 'Wren Calloway', phone: '', email: 'wren@example.com', address: '' }

let database: TestDatabase
let server: MailServer
let number: string

beforeAll(async () => {
  mailEnvironment()
  database = await testDatabase()
  await openShop(database)
  server = await startMailServer()
  await enterServer(server.port, monday)
  number = (await book({ customer })).number
})

/** Another process of the same shop, killed by itself or from here. */
async function dying(deed: 'store' | 'send', begun: (kill: () => void) => void = () => {}): Promise<void> {
  await closeClient(database.url)
  const args = ['--conditions=react-server', await bundled('tests/setup/mail-and-die.ts')]
  const said: string[] = []
  const child = spawn(process.execPath, [...args, deed, number, certificate.cert, monday.toISOString()], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  child.stderr.on('data', (piece) => said.push(String(piece)))
  begun(() => child.kill('SIGKILL'))
  const signal = await new Promise((resolve) => child.on('close', (_code, by) => resolve(by)))
  expect({ signal, said: said.join('') }).toEqual({ signal: 'SIGKILL', said: '' })
}

const sendAt = (ms: number) =>
  sendQueued({
    worker: 'the next one',
    now: () => new Date(monday.getTime() + ms),
    limits: { authority: certificate.cert },
  })

it('killed between store and send: it is sent once, by the next process', { timeout: 60_000 }, async () => {
  await dying('store')
  expect(server.got).toEqual([])
  expect(await sendAt(1000)).toBe(1)
  expect(await sendAt(2000)).toBe(0)
  expect(server.got.splice(0).map(({ to }) => to)).toEqual([['wren@example.com']])
})

it(
  'killed between send and mark: it is sent again once its lease is over, as the same mail',
  { timeout: 60_000 },
  async () => {
    const id = await sendFirst(number, monday)
    await dying('send', (kill) => (server.onMail = kill))
    server.onMail = () => {}
    expect(server.got).toHaveLength(1)
    // Nobody knows yet whether the one that died is still at it.
    expect(await sendAt(leaseMs - 1000)).toBe(0)
    expect(await sendAt(leaseMs + 1000)).toBe(1)
    expect(await sendAt(leaseMs + 2000)).toBe(0)
    const [first, second] = server.got.splice(0)
    expect(second?.mail.messageId).toBe(first?.mail.messageId)
    expect(second?.mail.text).toBe(first?.mail.text)
    expect(second?.mail.date).toEqual(first?.mail.date)
    const client = await openClient(database.url)
    expect(await client.outboxMail.findUnique({ where: { messageId: id } })).toMatchObject({ state: 'sent', tries: 2 })
  },
)

it('the worker of the server sends what is due, and only one of it is started', { timeout: 20_000 }, async () => {
  const sender = { now: () => monday, limits: { authority: certificate.cert } }
  const stop = startMailWorker(sender, 20)
  expect(startMailWorker(sender, 20)).toBe(stop)
  await sendFirst(number, monday)
  await vi.waitUntil(() => server.got.length === 1, { timeout: 10_000 })
  stop()
  await sendFirst(number, monday)
  await new Promise((resolve) => setTimeout(resolve, 300))
  expect(server.got.splice(0)).toHaveLength(1)
  expect(await sendAt(0)).toBe(1)
})
