import { beforeEach, describe, expect, it } from 'vitest'
import { auditChanges } from '@/lib/data/stored/records'
import { answerByLinkSchema } from '@/lib/schemas/answer-by-link'
import { answerFindingSchema, askFindingSchema } from '@/lib/schemas/finding'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { answerFinding } from '@/lib/use-cases/findings/answer-finding'
import { answerFindingByLink } from '@/lib/use-cases/findings/answer-finding-by-link'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { revokeCustomerLink } from '@/lib/use-cases/links/revoke-customer-link'
import { seeByLink } from '@/lib/use-cases/links/see-by-link'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

const day = 24 * 60 * 60 * 1000
const unknownId = '019caed9-4300-7000-8000-0000000000ff'

type Link = { readonly linkId: string; readonly token: string }

async function linkTo(jobId: string): Promise<Link> {
  const { linkId, path } = await makeCustomerLink(counter, { jobId }, at(monday))
  return { linkId, token: path.slice('/s/'.length) }
}

/** A job with one head and a finding on it, asked at 80 and a tenth of tax, and a link to the job. */
async function askedJob(what: string) {
  const { jobId, number, heads } = await book({
    heads: [head()],
    ordered: [{ work: 'flat-cut', note: '' }],
    pricesOnLink: false,
  })
  const { visitId = '', headId = '' } = heads[0] ?? {}
  const { findingId } = await reportFinding(machinist, { visitId, stepId: null, what }, at(monday))
  const terms = {
    findingId,
    version: 1,
    price: '80',
    tax: '10',
    addsWork: ['guides', 'flat-cut'],
    how: 'link',
  }
  await askFinding(counter, askFindingSchema.parse(terms), at(monday))
  return { jobId, number, visitId, headId, findingId, link: await linkTo(jobId) }
}

let database: TestDatabase
let mine: Awaited<ReturnType<typeof askedJob>>
let other: Awaited<ReturnType<typeof askedJob>>

beforeEach(async () => {
  process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
  database = await testDatabase()
  await openShop(database)
  mine = await askedJob('Guide 3 is loose')
  other = await askedJob('Another man’s crack')
})

type Over = Partial<{
  token: string
  findingId: string
  version: number
  answer: 'yes' | 'no'
  now: Date
  op: string
  hash: string
}>

function say({ token = mine.link.token, now = monday, op, hash, ...over }: Over) {
  const sent = {
    token,
    findingId: mine.findingId,
    version: 2,
    answer: 'yes',
    answeredBy: 'Wilma Harrow',
    ...over,
  }
  const { token: sentToken, ...input } = answerByLinkSchema.parse(sent)
  return answerFindingByLink({ token: sentToken }, input, at(now, op, hash))
}

/** Everything that an answer could change, in one text. */
async function state(): Promise<string> {
  const { finding, orderedLine, priceLine, routeStep, visit, operation } = database.client
  return JSON.stringify([
    await finding.findMany({ orderBy: { id: 'asc' } }),
    await orderedLine.findMany({ orderBy: { id: 'asc' } }),
    await priceLine.findMany({ orderBy: { id: 'asc' } }),
    await routeStep.findMany({ orderBy: [{ visitId: 'asc' }, { place: 'asc' }] }),
    await visit.findMany({ orderBy: { id: 'asc' } }),
    await operation.findMany({ orderBy: { id: 'asc' } }),
  ])
}

async function refusedUnchanged(work: () => Promise<unknown>) {
  const before = await state()
  const refusal = await refusalOf(work())
  expect(await state()).toBe(before)
  return refusal
}

const page = async (link = mine.link) => (await seeByLink(link.token, monday)).questions
const jobNow = () => seeJob(counter, { number: mine.number, now: monday })

describe('a finding on the customer’s link', () => {
  it('stands there with its price, tax and all, though the link shows no other price', async () => {
    const view = await seeByLink(mine.link.token, monday)
    expect(view.account).toBeNull()
    expect(view.questions).toEqual([
      {
        id: mine.findingId,
        version: 2,
        tag: 'T-0401',
        what: 'Guide 3 is loose',
        // 80.00 and a tenth of it.
        price: '$88.00',
        free: false,
        tax: '$8.00',
        adds: ['Guides', 'Flat cut'],
        terms: '$88.00 with $8.00 tax included; adds: Guides, Flat cut.',
        answered: null,
        photos: [],
      },
    ])
    expect(JSON.stringify(view)).not.toContain('crack')
  })

  it('with a yes adds the work to the route and the price to the account, as at the counter', async () => {
    await say({ answer: 'yes' })
    const job = await jobNow()
    expect(job.heads[0]?.ordered.map((line) => line.work).sort()).toEqual(['flat-cut', 'guides'])
    expect(job.heads[0]?.route.some((step) => step.stepId === 'guides')).toBe(true)
    expect(job.account).toMatchObject({ netMinor: 8000, taxMinor: 800, totalMinor: 8800 })
    expect(await page()).toMatchObject([{ answered: { answer: 'yes', on: 'Mar 2, 2026', by: 'Wilma Harrow' } }])
  })

  it('with a no adds nothing and stays as declined', async () => {
    await say({ answer: 'no' })
    const job = await jobNow()
    expect(job.heads[0]?.ordered.map((line) => line.work)).toEqual(['flat-cut'])
    expect(job.account?.prices).toEqual([])
    expect(await page()).toMatchObject([{ answered: { answer: 'no', by: 'Wilma Harrow' } }])
  })

  it('is seen at once at the counter, on the job and on the head: on the link, by whom', async () => {
    await say({ answer: 'no' })
    const said = { answer: 'no', by: 'Wilma Harrow', onLink: true, at: monday }
    const view = await seeCounter(machinist, { now: new Date(monday.getTime() + day) })
    expect(view.answers.map((finding) => finding.what)).toEqual(['Another man’s crack'])
    expect(view.answeredByLink).toMatchObject([{ id: mine.findingId, tag: 'T-0401', said }])
    expect((await jobNow()).findings).toMatchObject([{ id: mine.findingId, said }])
    expect((await seeHead(machinist, mine.headId)).visits[0]?.findings).toMatchObject([{ said }])
    expect((await seeCounter(counter, { now: new Date(monday.getTime() + 8 * day) })).answeredByLink).toEqual([])
  })

  it('is put down to the link, to nobody of the shop, and without the customer’s name', async () => {
    await say({ answer: 'yes', op: 'op-1' })
    const { client } = database
    const entry = await client.auditEntry.findFirstOrThrow({ where: { action: 'finding.answer' } })
    expect(entry).toMatchObject({ actorId: mine.link.linkId, visitId: mine.visitId, operationId: 'op-1' })
    expect(auditChanges.read(entry.changes, entry.seq)).toEqual({
      answer: 'yes',
      given: 'by link',
      priceMinor: 8000,
      taxName: '',
      taxMillionths: 100_000,
      addsWork: 'guides,flat-cut',
    })
    expect(await client.person.count({ where: { id: entry.actorId } })).toBe(0)
    const kept = JSON.stringify([await client.auditEntry.findMany(), await client.operation.findMany()])
    for (const secret of ['Wilma', mine.link.token]) expect(kept).not.toContain(secret)
    const [line] = (await seeTrail(owner, { find: 'finding.answer', before: null })).lines
    expect(line).toMatchObject({ by: 'the customer, by link', tag: 'T-0401', jobNumber: mine.number })
  })
})

describe('what a link may not answer', () => {
  it('a dead link, whatever it died of, and what is of another job: in the words of the page', async () => {
    const revoked = await linkTo(mine.jobId)
    await revokeCustomerLink(counter, { linkId: revoked.linkId }, at(monday))
    const words = await refusalOf(seeByLink('A'.repeat(32), monday))
    expect(words.code).toBe('not-found')
    const attempts: Over[] = [
      { token: 'A'.repeat(32) },
      { token: '' },
      { token: '../../etc' },
      { token: revoked.token },
      { now: new Date(monday.getTime() + 180 * day) },
      { findingId: other.findingId },
      { token: other.link.token },
      { findingId: unknownId },
      { findingId: '' },
    ]
    for (const attempt of attempts) expect(await refusedUnchanged(() => say(attempt))).toEqual(words)
  })

  it('a link that was revoked after it answered is not even told the answer again', async () => {
    await say({ op: 'op-1' })
    await revokeCustomerLink(counter, { linkId: mine.link.linkId }, at(monday))
    expect((await refusedUnchanged(() => say({ op: 'op-1' }))).code).toBe('not-found')
  })

  it('a finding that was not asked, though its number is known', async () => {
    const { findingId } = await reportFinding(
      machinist,
      { visitId: mine.visitId, stepId: null, what: 'for ourselves' },
      at(monday),
    )
    expect((await page()).map((question) => question.what)).toEqual(['Guide 3 is loose'])
    expect((await refusedUnchanged(() => say({ findingId, version: 1 }))).code).toBe('not-found')
  })

  it('a question without a price', async () => {
    const terms = { findingId: mine.findingId, version: 2, price: '', tax: '', addsWork: [], how: '' }
    await askFinding(counter, askFindingSchema.parse(terms), at(monday))
    expect(await page()).toMatchObject([{ price: null, terms: 'no price yet.' }])
    expect((await refusedUnchanged(() => say({ version: 3 }))).code).toBe('wrong-state')
  })

  it('on a head that is done with; and it is not asked any more', async () => {
    await returnAsIs(counter, { visitId: mine.visitId, reason: 'pulled' }, at(monday))
    expect(await page()).toEqual([])
    expect((await refusedUnchanged(() => say({}))).code).toBe('wrong-state')
  })

  it.each(['scrappedAt', 'handOver', 'release'] as const)('on a head with %s', async (end) => {
    const { client } = database
    const { visitId } = mine
    const by = { at: monday, byId: 'p-owner' }
    if (end === 'scrappedAt') await client.visit.update({ where: { id: visitId }, data: { scrappedAt: monday } })
    if (end === 'handOver')
      await client.handOver.create({
        data: { ...by, visitId, takenBy: 'W', side: '', partsBack: '', note: '' },
      })
    if (end === 'release') {
      const facts = JSON.stringify({})
      await client.release.create({
        data: { ...by, id: 'r', visitId, revision: 1, facts, pdfSha256: '', reason: '' },
      })
    }
    expect((await refusedUnchanged(() => say({}))).code).toBe('wrong-state')
  })
})

describe('answered once', () => {
  it('twice from one page: the second is told what was said', async () => {
    await say({ answer: 'no' })
    const again = await refusedUnchanged(() => say({ answer: 'yes' }))
    expect(again).toMatchObject({ code: 'conflict', readsNow: 'Answered on Mar 2, 2026: no, by Wilma Harrow.' })
    expect((await refusedUnchanged(() => say({ answer: 'yes', version: 3 }))).code).toBe('conflict')
  })

  it('the counter was first', async () => {
    const heard = {
      findingId: mine.findingId,
      version: 2,
      price: '80',
      tax: '10',
      addsWork: [],
      how: 'phone',
    }
    const no = answerFindingSchema.parse({ ...heard, answer: 'no', answeredBy: 'Wilma Harrow' })
    await answerFinding(counter, no, at(monday))
    expect(await refusedUnchanged(() => say({ answer: 'yes' }))).toMatchObject({
      code: 'conflict',
      readsNow: 'Answered on Mar 2, 2026: no, by Wilma Harrow.',
    })
    expect((await jobNow()).findings).toMatchObject([{ said: { onLink: false } }])
  })

  it('the link was first: the counter’s answer is refused', async () => {
    await say({ answer: 'no' })
    const heard = {
      findingId: mine.findingId,
      version: 2,
      price: '80',
      tax: '10',
      addsWork: [],
      how: 'phone',
    }
    const yes = answerFindingSchema.parse({ ...heard, answer: 'yes', answeredBy: 'Wilma Harrow' })
    expect((await refusedUnchanged(() => answerFinding(counter, yes, at(monday)))).code).toBe('conflict')
  })

  it('the price or the work was changed since the page was read: refused with what stands now', async () => {
    const terms = {
      findingId: mine.findingId,
      version: 2,
      price: '95.50',
      tax: '',
      addsWork: ['inserts'],
      how: '',
    }
    await askFinding(counter, askFindingSchema.parse(terms), at(monday))
    expect(await refusedUnchanged(() => say({ version: 2 }))).toMatchObject({
      code: 'conflict',
      readsNow: expect.stringMatching(/^\$95\.50; adds: .*insert/i),
    })
    await say({ version: 3 })
    expect((await jobNow()).account).toMatchObject({ totalMinor: 9550 })
  })

  it('the same sent again after a lost answer has one effect; under the same number other content is refused', async () => {
    expect(await say({ op: 'op-1', hash: 'a' })).toEqual(await say({ op: 'op-1', hash: 'a' }))
    expect(await database.client.priceLine.count()).toBe(1)
    const foreign = { token: other.link.token, findingId: other.findingId, op: 'op-1' }
    expect((await refusedUnchanged(() => say({ ...foreign, hash: 'a' }))).code).toBe('operation-reused')
    expect((await refusedUnchanged(() => say({ op: 'op-1', hash: 'b' }))).code).toBe('operation-reused')
  })

  it('ten times at once under one number: ten times the same answer, one effect', async () => {
    const answers = await Promise.all(Array.from({ length: 10 }, () => say({ op: 'op-1' })))
    expect(answers).toEqual(Array.from({ length: 10 }, () => ({ id: mine.findingId })))
    await hasOneEffect()
  })

  it('ten times at once under ten numbers, yes and no: one effect, nine conflicts', async () => {
    const outcomes = await Promise.all(
      Array.from({ length: 10 }, (_, turn) =>
        say({ op: `op-${turn}`, answer: turn % 2 === 0 ? 'yes' : 'no' }).then(
          () => 'taken',
          (error: { refusal: { code: string } }) => error.refusal.code,
        ),
      ),
    )
    expect(outcomes.sort()).toEqual([...Array.from({ length: 9 }, () => 'conflict'), 'taken'])
    const { answer } = await database.client.finding.findUniqueOrThrow({ where: { id: mine.findingId } })
    expect(await database.client.priceLine.count()).toBe(answer === 'yes' ? 1 : 0)
    expect(await database.client.auditEntry.count({ where: { action: 'finding.answer' } })).toBe(1)
  })

  async function hasOneEffect() {
    const { client } = database
    expect(await client.priceLine.count()).toBe(1)
    expect(await client.orderedLine.count({ where: { findingId: mine.findingId } })).toBe(1)
    expect(await client.auditEntry.count({ where: { action: 'finding.answer' } })).toBe(1)
    expect(await client.finding.findUniqueOrThrow({ where: { id: mine.findingId } })).toMatchObject({
      version: 3,
    })
  }
})
