import { beforeAll, describe, expect, it, vi } from 'vitest'
import { dayWords } from '@/lib/core/shop/when-words'
import { blankMessages } from '@/lib/data/messages'
import { askFindingSchema } from '@/lib/schemas/finding'
import { changeTextSchema, logMessageSchema, sendMessageSchema } from '@/lib/schemas/message'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'
import { seeByLink } from '@/lib/use-cases/links/see-by-link'
import { changeText } from '@/lib/use-cases/messages/change-text'
import { logMessage } from '@/lib/use-cases/messages/log-message'
import { prepareMessage } from '@/lib/use-cases/messages/prepare-message'
import { seeMessages } from '@/lib/use-cases/messages/see-messages'
import { seeText } from '@/lib/use-cases/messages/see-texts'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

const address = 'https://heads.example'
const customer = {
  id: '',
  name: 'Wren Calloway',
  phone: '(303) 555-0147, after 6',
  email: 'wren@example.com',
  address: '',
}

let database: TestDatabase
let job: BookedJob

beforeAll(async () => {
  vi.stubEnv('NEXTAUTH_SECRET', 'only for these tests, long enough')
  vi.stubEnv('BRASSTAG_URL', address)
  database = await testDatabase()
  await openShop(database)
  job = await book({ customer })
})

const textOf = async (kind: string, actor = counter) => {
  const view = await seeMessages(actor, job.number)
  const text = view.texts.find((one) => one.kind === kind)
  if (!text) throw new Error(`There is no ${kind}.`)
  return { ...text, jobId: view.jobId }
}
const writtenOf = async (kind: string) => sendMessageSchema.parse(await textOf(kind))

describe('a text', () => {
  it('says what is so of the job, and what is missing where it cannot be written', async () => {
    const booked = await textOf('booked')
    expect(booked.lacks).toEqual([])
    expect(booked.subject).toBe(`Quay Street Heads: job ${job.number} is booked`)
    const due = dayWords('2026-03-20', { locale: 'en-US' })
    const tags = job.heads.map(({ tag }) => tag).join(', ')
    // The shop has no phone number: its line is left out.
    expect(booked.body.split('\n')).toEqual([
      'Hello Wren Calloway,',
      '',
      `We have booked your job ${job.number}: ${tags}.`,
      `It is due on ${due}.`,
      '',
      'You can see where your heads are on this page:',
      '{link}',
      '',
      'Quay Street Heads',
    ])
    expect((await textOf('ready')).lacks).toEqual(['ready-head'])
    expect((await textOf('question')).lacks).toEqual(['finding'])
    expect((await refusalOf(prepareMessage(counter, await writtenOf('ready'), at(monday)))).message).toMatch(
      /No head of this job is ready/,
    )
  })

  it('is nobody’s but the counter’s and the owner’s', async () => {
    expect((await refusalOf(seeMessages(machinist, job.number))).code).toBe('not-allowed')
    const { texts, customer: known } = await seeMessages(owner, job.number)
    expect(texts).toHaveLength(5)
    // E.164: the country's code and the ten figures, nothing of the words.
    expect(known).toMatchObject({ phone: '(303) 555-0147, after 6', dial: '+13035550147', email: 'wren@example.com' })
  })

  it('asks about a finding only once it has a price, and then with it', async () => {
    const visitId = job.heads[0]?.visitId ?? ''
    const { findingId: id } = await reportFinding(machinist, { visitId, stepId: null, what: 'bent guide' }, at(monday))
    expect((await textOf('question')).lacks).toEqual(['price'])
    const asked = { findingId: id, version: 1, price: '40', tax: '10', addsWork: [], how: '' }
    await askFinding(counter, askFindingSchema.parse(asked), at(monday))
    const question = await textOf('question')
    expect(question).toMatchObject({ lacks: [], findingId: id, about: `${job.heads[0]?.tag}: bent guide` })
    // 40.00 and a tenth of it.
    expect(question.body).toContain('we found: bent guide.\nPrice to put it right: $44.00.')
  })

  it('is made with a link that opens the job, which is kept nowhere', async () => {
    const made = await prepareMessage(counter, await writtenOf('booked'), at(monday, 'op-text'))
    const token = /https:\/\/heads\.example\/s\/([\w-]{32})$/m.exec(made.body)?.[1] ?? ''
    expect((await seeByLink(token, monday)).jobNumber).toBe(job.number)
    const again = await refusalOf(prepareMessage(counter, await writtenOf('booked'), at(monday, 'op-text')))
    expect(again.message).toMatch(/already made/)
    await logMessage(
      counter,
      logMessageSchema.parse({ ...(await writtenOf('booked')), way: 'sms', linkId: made.linkId }),
      at(monday),
    )
    const kept = JSON.stringify([
      await database.client.message.findMany(),
      await database.client.operation.findMany(),
      await database.client.auditEntry.findMany(),
      await database.client.customerLink.findMany(),
    ])
    expect(kept).not.toContain(token)
    const { messages } = await seeMessages(counter, job.number)
    expect(messages[0]).toMatchObject({
      ...{
        kind: 'booked',
        way: 'sms',
        toName: 'Wren Calloway',
        toAddress: '(303) 555-0147, after 6',
        by: counter.name,
      },
      ...{ byItself: false, mail: null },
    })
    expect(messages[0]?.body).toContain('{link}')
  })

  it('is not put down to the link of another job', async () => {
    const other = await book({ customer: { ...customer, name: 'Ash Pell' } })
    const { texts, jobId } = await seeMessages(counter, other.number)
    const theirs = await prepareMessage(counter, sendMessageSchema.parse({ ...texts[0], jobId }), at(monday))
    const mine = logMessageSchema.parse({ ...(await writtenOf('booked')), way: 'copy', linkId: theirs.linkId })
    expect((await refusalOf(logMessage(counter, mine, at(monday)))).code).toBe('not-found')
  })

  it('leaves the customer’s name and address out of the trail, and is blanked with them', async () => {
    const entries = await database.client.auditEntry.findMany({ where: { subject: 'message' } })
    expect(entries).not.toEqual([])
    expect(JSON.stringify(entries)).not.toMatch(/Wren|wren|555-0147|5550147/)
    const { customerId } = await database.client.job.findUniqueOrThrow({ where: { id: job.jobId } })
    await blankMessages(database.client, customerId, monday)
    const { messages } = await seeMessages(counter, job.number)
    expect(messages[0]).toMatchObject({ isBlanked: true, toName: '', toAddress: '', subject: '', body: '' })
    expect(messages[0]).toMatchObject({ kind: 'booked', way: 'sms', by: counter.name })
  })
})

describe('the owner’s wording', () => {
  const change = (over: object, actor = owner) =>
    changeText(
      actor,
      changeTextSchema.parse({
        ...{ kind: 'ready', subject: 'Job {job}', body: 'Come and fetch {heads}.', byItself: false, version: 0 },
        ...over,
      }),
      at(monday),
    )

  it('is used from then on, and the page says who changed what', async () => {
    expect((await refusalOf(change({}, counter))).code).toBe('not-allowed')
    await change({})
    const tags = job.heads.map(({ tag }) => tag).join(', ')
    expect(await textOf('ready')).toMatchObject({ subject: `Job ${job.number}`, body: `Come and fetch ${tags}.` })
    await change({ subject: 'Ready: {job}', version: 1 })
    const { text, history } = await seeText(owner, 'ready')
    expect(text).toMatchObject({ subject: 'Ready: {job}', version: 2 })
    expect(history.map(({ by, at: when }) => [by, when])).toEqual([
      [owner.name, monday],
      [owner.name, monday],
    ])
    expect(history[0]?.changes).toEqual(['subject: from Job {job} to Ready: {job}'])
  })

  it('is refused with a placeholder that this text does not know, over a newer one, and unchanged', async () => {
    const parsed = changeTextSchema.safeParse({
      ...{ kind: 'ready', subject: 'x', body: 'Hi {nmae}', byItself: false, version: 2 },
    })
    expect(parsed.error?.issues.map(({ path, message }) => [path, message.slice(0, 34)])).toEqual([
      [['body'], 'This text does not know {nmae}. It'],
    ])
    expect((await refusalOf(change({ body: 'Other', version: 1 }))).code).toBe('conflict')
    expect((await refusalOf(change({ subject: 'Ready: {job}', version: 2 }))).message).toMatch(/Nothing changed/)
  })

  it('goes out by itself only over a mail server', async () => {
    expect((await refusalOf(change({ byItself: true, version: 2 }))).fields).toHaveProperty('byItself')
  })
})

it('a line break in a subject is refused', () => {
  const typed = { jobId: 'j', kind: 'ready', findingId: '', subject: 'a\r\nBcc: x@y.example', body: 'b' }
  expect(sendMessageSchema.safeParse(typed).success).toBe(false)
})
