import { describe, expect, it } from 'vitest'
import { answerFindingSchema, askFindingSchema } from '@/lib/schemas/finding'
import { answerFinding } from '@/lib/use-cases/findings/answer-finding'
import { askFinding } from '@/lib/use-cases/findings/ask-finding'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { seeFinding } from '@/lib/use-cases/findings/see-finding'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { testDatabase } from '@/tests/setup/database'
import { at, book, counter, head, machinist, monday, openShop, otherCounter, refusalOf } from '../jobs/counter-shop'

async function found() {
  process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
  const database = await testDatabase()
  await openShop(database)
  const { heads } = await book({ heads: [head()], ordered: [{ work: 'flat-cut', note: '' }] })
  const visitId = heads[0]?.visitId ?? ''
  const { findingId } = await reportFinding(machinist, { visitId, stepId: null, what: 'Guide 3 is loose' }, at(monday))
  const see = () => seeFinding(counter, { id: findingId, now: monday })
  const job = () => seeJob(counter, { number: '26-0001', now: monday })
  const asked = {
    findingId,
    version: 1,
    price: '80',
    tax: '10',
    addsWork: ['guides', 'flat-cut'],
    how: 'phone',
  }
  return { client: database.client, findingId, see, job, asked }
}

type Asked = Awaited<ReturnType<typeof found>>['asked']
const answer = (asked: Asked, over: object) =>
  answerFindingSchema.parse({ ...asked, answer: 'yes', answeredBy: 'Tamsin Rook', ...over })

describe('a finding', () => {
  it('is asked first, and still waits', async () => {
    const { see, asked } = await found()
    await askFinding(counter, askFindingSchema.parse(asked), at(monday))
    expect(await see()).toMatchObject({
      version: 2,
      price: '80.00',
      tax: '10',
      // 80.00 and a tenth of it.
      terms: '$88.00 with $8.00 tax included; adds: Guides, Flat cut.',
      how: 'phone',
      askedAt: monday,
      answer: null,
    })
  })

  it('with a yes adds the work to the head, once, and the price to the job', async () => {
    const { client, see, job, asked } = await found()
    await answerFinding(counter, answer(asked, {}), at(monday))
    const after = await job()
    expect(after.heads[0]?.ordered.map((line) => line.work).sort()).toEqual(['flat-cut', 'guides'])
    expect(after.heads[0]?.route.some((step) => step.stepId === 'guides')).toBe(true)
    expect(after.account?.prices).toMatchObject([
      { text: 'Guide 3 is loose', quantityThousandths: 1000, unitMinor: 8000, taxMillionths: 100_000 },
    ])
    expect(await see()).toMatchObject({ answer: 'yes', answeredBy: 'Tamsin Rook' })
    const entry = await client.auditEntry.findFirstOrThrow({ where: { action: 'finding.answer' } })
    expect(entry.changes).not.toContain('Tamsin')
  })

  it('with a no adds nothing and stays on record', async () => {
    const { client, see, job, asked } = await found()
    await answerFinding(counter, answer(asked, { answer: 'no' }), at(monday))
    const after = await job()
    expect(after.heads[0]?.ordered.map((line) => line.work)).toEqual(['flat-cut'])
    expect(after.account?.prices).toEqual([])
    expect(await see()).toMatchObject({ answer: 'no' })
    expect(await client.finding.count()).toBe(1)
  })

  it('is answered once', async () => {
    const { client, asked } = await found()
    await answerFinding(otherCounter, answer(asked, { answer: 'no' }), at(monday))
    expect(await refusalOf(answerFinding(counter, answer(asked, {}), at(monday)))).toMatchObject({
      code: 'conflict',
    })
    expect(await refusalOf(answerFinding(counter, answer(asked, { version: 2 }), at(monday)))).toMatchObject({
      code: 'conflict',
    })
    expect(await client.priceLine.count()).toBe(0)
  })

  it('is not a machinist’s to ask, answer or see the price of', async () => {
    const { findingId, see, asked } = await found()
    for (const attempt of [
      askFinding(machinist, askFindingSchema.parse(asked), at(monday)),
      answerFinding(machinist, answer(asked, {}), at(monday)),
      seeFinding(machinist, { id: findingId, now: monday }),
    ]) {
      expect(await refusalOf(attempt)).toMatchObject({ code: 'not-allowed' })
    }
    expect(await see()).toMatchObject({ version: 1, answer: null, askedAt: null })
  })
})
