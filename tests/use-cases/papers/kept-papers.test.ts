import { beforeAll, describe, expect, it, vi } from 'vitest'
import { answer } from '@/app/api/papers/paper-response'
import type { Actor } from '@/lib/core/access/roles'
import { log } from '@/lib/data/log'
import { jobSheet } from '@/lib/pdf/job-sheet'
import { keptPaper, type Paper } from '@/lib/papers/kept-paper'
import { printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { printJobSheet } from '@/lib/use-cases/papers/print-papers'
import { printClaimTicket } from '@/lib/use-cases/papers/print-claim-ticket'
import { printHandOverSlip } from '@/lib/use-cases/papers/print-hand-over-slip'
import { printSetting } from '@/lib/papers/print-spec'
import { job, setting } from '@/tests/pdf/sample-papers'
import { decoded, greyPages } from '@/tests/pdf/rendered'
import { readPdf } from '@/tests/pdf/read-pdf'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { counter, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { shopWithJob } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

const later = new Date(monday.getTime() + 3_600_000)
const nobody: Actor = { ...machinist, roles: [] }

let shop: TestDatabase
let number: string
beforeAll(async () => {
  shop = await testDatabase()
  number = (await shopWithJob(shop)).number
})

const ask = (print: () => Promise<Paper>, known?: string) =>
  answer(new Request('http://shop.test/', known ? { headers: { 'if-none-match': known } } : {}), print)

describe('a paper that was made before', () => {
  it('is not sent again while it says the same, whatever the hour', async () => {
    const first = await ask(() => printJobSheet(machinist, number, monday))
    expect(first.status).toBe(200)
    expect(first.headers.get('cache-control')).toBe('private, no-cache')
    const etag = first.headers.get('etag') ?? ''
    expect(etag).toMatch(/^"[\w-]{40,}"$/)
    const again = await ask(() => printJobSheet(machinist, number, later), etag)
    expect([again.status, again.headers.get('etag'), await again.text()]).toEqual([304, etag, ''])
    const whole = await ask(() => printJobSheet(machinist, number, later), '"another"')
    expect(Buffer.from(await whole.arrayBuffer()).equals(Buffer.from(await first.arrayBuffer()))).toBe(true)
  })

  it('is another paper once the record, the shop or the sheet is another', async () => {
    const tags: string[] = []
    const { paper } = await shop.client.shop.findFirstOrThrow()
    const other = paper === 'a4' ? 'letter' : 'a4'
    const tag = async () => {
      const { etag } = await printJobSheet(machinist, number, monday)
      tags.push(etag)
    }
    await tag()
    await shop.client.visit.updateMany({ data: { rackPlace: 'rack Z', version: { increment: 1 } } })
    await tag()
    await shop.client.shop.updateMany({ data: { paper: other } })
    await tag()
    await shop.client.shop.updateMany({ data: { name: 'Another Name' } })
    await tag()
    expect(new Set(tags).size).toBe(4)
  })

  it('is neither sent nor said to be unchanged to those who may not see it', async () => {
    const { etag } = await printJobSheet(machinist, number, monday)
    const answered = await ask(() => printJobSheet(nobody, number, monday), etag)
    expect([answered.status, answered.headers.get('etag')]).toEqual([403, null])
    expect(answered.headers.get('cache-control')).toBe('no-store')
  })

  it('is made once for two who ask together, and without making when nothing changed', async () => {
    const make = vi.fn(async () => new Uint8Array([37]))
    const paper = () => keptPaper({ kind: 'trial', name: 'trial.pdf', data: { words: 'x' }, setting }, make)
    const known = paper().etag
    expect((await ask(async () => paper(), known)).status).toBe(304)
    expect(make).not.toHaveBeenCalled()
    await Promise.all([paper().bytes(), paper().bytes()])
    await paper().bytes()
    expect(make).toHaveBeenCalledTimes(1)
  })
})

describe('labels on a sheet', () => {
  it('begin at the first free place, for the heads that were picked', async () => {
    const all = await readPdf(await (await printTagLabels(counter, number, monday, { first: 5, tags: [] })).bytes())
    expect(all.sizes[0]?.[0]).toBeGreaterThan(200)
    const tags = all.text.match(/T-\d{4}/g) ?? []
    expect(tags.length).toBe(2)
    const one = await printTagLabels(counter, number, monday, { first: 5, tags: [tags[1] ?? ''] })
    expect((await readPdf(await one.bytes())).text.match(/T-\d{4}/g)).toEqual([tags[1]])
    for (const first of [0, 28]) {
      const refused = await refusalOf(printTagLabels(counter, number, monday, { first, tags: [] }))
      expect(refused.code).toBe('invalid')
    }
  })
})

describe('a claim ticket', () => {
  it('says what was left, by when and what was paid; its QR code is the number of the job and no more', async () => {
    const bytes = await (await printClaimTicket(counter, number, monday)).bytes()
    const { pages, text } = await readPdf(bytes)
    expect(pages).toHaveLength(1)
    const found = await shop.client.job.findUniqueOrThrow({
      where: { number },
      include: { customer: { include: { contact: true } }, visits: { include: { head: { include: { tags: true } } } } },
    })
    for (const part of [
      number,
      found.customer.contact?.name ?? 'none',
      ...found.visits.flatMap(({ head }) => head.tags.map((tag) => tag.number)),
    ]) {
      expect(text).toContain(part)
    }
    const [page] = await greyPages(bytes, 200)
    expect(page && decoded(page)).toBe(number)
    expect((await refusalOf(printClaimTicket(machinist, number, monday))).code).toBe('not-allowed')
  })
})

describe('a hand-over slip', () => {
  it('waits for a head that was handed over, and is for those who see prices', async () => {
    expect((await refusalOf(printHandOverSlip(counter, number, monday))).code).toBe('wrong-state')
    expect((await refusalOf(printHandOverSlip(machinist, number, monday))).code).toBe('not-allowed')
  })

  it('says who took what, what came back, and the account, tax rounded once', async () => {
    const { client } = shop
    const found = await client.job.findUniqueOrThrow({ where: { number }, include: { visits: true } })
    await client.priceLine.updateMany({ where: { jobId: found.id }, data: { endedAt: monday } })
    await client.payment.createMany({
      data: [
        {
          id: '019caed9-4300-7000-8000-0000000000d1',
          jobId: found.id,
          kind: 'deposit',
          minor: 50,
          how: 'cash',
          at: monday,
          byId: owner.personId,
        },
      ],
    })
    // Three lines of 0.33 at 8.25 %: 0.99 net, 0.99 × 0.0825 = 0.081675, rounded once to 0.08, 1.07 in all.
    for (const [i, text] of ['Flat cut', 'Wash', 'Flow run'].entries()) {
      await client.priceLine.create({
        data: {
          id: `019caed9-4300-7000-8000-0000000000e${i}`,
          jobId: found.id,
          text,
          quantityThousandths: 1000,
          unitMinor: 33,
          taxMillionths: 82_500,
          createdAt: monday,
        },
      })
    }
    await client.handOver.create({
      data: {
        visitId: found.visits[0]?.id ?? '',
        takenBy: 'Piers Oxley',
        side: 'left',
        partsBack: 'two cores, old springs',
        note: '',
        at: monday,
        byId: owner.personId,
      },
    })
    const words = (await readPdf(await (await printHandOverSlip(counter, number, monday)).bytes())).text.replace(
      /\s+/g,
      ' ',
    )
    for (const part of [
      'Piers Oxley',
      'left bank',
      'two cores, old springs',
      'Still here:',
      '0.99',
      '0.08',
      '1.07',
      'Deposit',
      '0.50',
      'To pay',
      '0.57',
    ]) {
      expect(words).toContain(part)
    }
  })
})

describe('a letter that no face has', () => {
  it('prints a mark and is logged once a paper, as a letter and not as the name it stood in', async () => {
    const warned = vi.spyOn(log, 'warn').mockImplementation(() => undefined)
    const shopManner = { timeZone: 'UTC', locale: 'en', paper: 'a4' }
    const bytes = await jobSheet({ ...job, customer: '漢字 漢' }, printSetting(shopManner, monday))
    expect((await readPdf(bytes)).text).toContain('\ufffd\ufffd \ufffd')
    expect(warned.mock.calls).toEqual([
      [{ paper: 'Job sheet 26-0117', letters: ['U+6F22', 'U+5B57'] }, 'letters that no face has'],
    ])
    await jobSheet(job, printSetting(shopManner, monday))
    expect(warned).toHaveBeenCalledTimes(1)
  })
})
