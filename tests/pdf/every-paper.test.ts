import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { isTag } from '@/lib/core/shop/tag-number'
import { paperJob, paperVisitsOfJob } from '@/lib/data/papers'
import { shopOf } from '@/lib/data/shop'
import { seedDemo } from '@/lib/demo/seed'
import { jobSheet, type JobSheetData } from '@/lib/pdf/job-sheet'
import { jobSheetOf } from '@/lib/use-cases/papers/job-sheet-of'
import { paperHeads } from '@/lib/use-cases/papers/paper-head'
import { printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { printJobSheet, printOutsideSheet } from '@/lib/use-cases/papers/print-papers'
import { printReceipt } from '@/lib/use-cases/papers/print-receipt'
import { printSpecSheet } from '@/lib/use-cases/papers/spec-paper'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { readPdf } from './read-pdf'
import { clearEdgeMm, decoded, greyPages, structureOf, tonesOf } from './rendered'
import { setting } from './sample-papers'

vi.setConfig({ testTimeout: 240_000, hookTimeout: 300_000 })

const now = new Date('2026-03-04T19:30:00Z')
const owner: Actor = {
  personId: '019caed9-4300-7000-8000-0000000000ff',
  name: 'Una Test',
  roles: ['owner'],
  grants: [],
  via: 'password',
}

type Kind = 'job-sheet' | 'label' | 'label-sheet' | 'receipt' | 'outside-sheet' | 'spec-sheet'
type Printed = { readonly kind: Kind; readonly of: string; readonly bytes: Uint8Array }

let shop: TestDatabase
const papers: Printed[] = []
/** What the job sheets were made from, by job. */
const jobs = new Map<string, JobSheetData>()

beforeAll(async () => {
  vi.stubEnv('NEXTAUTH_SECRET', 'a secret of a test, which is long enough')
  vi.stubEnv('BRASSTAG_URL', 'http://192.168.1.20:3000')
  shop = await testDatabase()
  await seedDemo(now)
  const { client } = shop
  const made = async (kind: Kind, of: string, paper: { bytes: Uint8Array | (() => Promise<Uint8Array>) }) => {
    const { bytes } = paper
    papers.push({ kind, of, bytes: typeof bytes === 'function' ? await bytes() : bytes })
  }
  const shopRow = await shopOf(client)
  const names = new Map((await client.person.findMany()).map(({ id, name }) => [id, name]))
  for (const { id, number } of await client.job.findMany({ orderBy: { number: 'asc' } })) {
    const heads = await paperHeads(client, await paperVisitsOfJob(client, id))
    jobs.set(
      number,
      jobSheetOf(
        await paperJob(client, number),
        heads,
        shopRow,
        (person) => names.get(person) ?? '',
        () => null,
      ),
    )
    await made('job-sheet', number, await printJobSheet(owner, number, now))
    if (heads.some(({ visit }) => visit.handOver))
      await made('receipt', number, await printReceipt(owner, number, now))
    if (!heads.some(({ tag }) => isTag(tag))) continue
    await made('label', number, await printTagLabels(owner, number, now))
    await made('label-sheet', number, await printTagLabels(owner, number, now, { first: 27, tags: [] }))
  }
  for (const { id, number } of await client.outsideOrder.findMany()) {
    await made('outside-sheet', number, await printOutsideSheet(owner, id, now))
  }
  for (const { id } of await client.visit.findMany({
    where: { OR: [{ releases: { some: {} } }, { returned: { isNot: null } }] },
  })) {
    await made('spec-sheet', id, await printSpecSheet(owner, id))
  }
})

const of = (kind: Kind) => papers.filter((paper) => paper.kind === kind)
/** As it reads: a font has one letter for the micro sign and the Greek mu. */
const flat = (text: string) => text.normalize('NFKC').replace(/\s+/g, ' ')

describe('every paper of the demo shop', () => {
  it('is there', () => {
    expect(of('job-sheet').length).toBeGreaterThanOrEqual(19)
    for (const kind of ['label', 'label-sheet', 'receipt', 'outside-sheet', 'spec-sheet'] as const) {
      expect(of(kind).length, kind).toBeGreaterThan(0)
    }
  })

  it('is a sound file', async () => {
    for (const { kind, of: what, bytes } of papers) {
      expect(await structureOf(bytes), `${kind} ${what}`).toContain(
        'No syntax or stream encoding errors found',
      )
    }
  })

  it('leaves its edge free, and prints dark enough on a black-and-white printer', async () => {
    const dpi = 75
    const pixelMm = 25.4 / dpi
    for (const { kind, of: what, bytes } of papers) {
      for (const page of await greyPages(bytes, dpi)) {
        const least = kind === 'label' ? 2 : 8
        expect(clearEdgeMm(page, dpi) + pixelMm, `${kind} ${what}`).toBeGreaterThanOrEqual(least)
        expect(tonesOf(page).darkest, `${kind} ${what}`).toBeLessThan(80)
      }
    }
  })
})

describe('every job sheet of the demo shop', () => {
  it('is one page a head, on both sizes of paper, in the order of the heads', async () => {
    for (const [number, data] of jobs) {
      for (const paper of ['letter', 'a4'] as const) {
        const { pages } = await readPdf(await jobSheet(data, { ...setting, paper }))
        expect(
          pages.map((page) => data.heads.findIndex(({ tag }) => flat(page).startsWith(tag))),
          `${number} ${paper}`,
        ).toEqual(data.heads.map((_, i) => i))
      }
    }
  })

  it('has every figure and every word of what is known of the head', async () => {
    const words = (value: unknown): string[] => {
      if (typeof value === 'string') return value.split(/\s+/)
      if (value === null || typeof value !== 'object') return []
      return Object.values(value).flatMap(words)
    }
    for (const { of: number, bytes } of of('job-sheet')) {
      const { pages } = await readPdf(bytes)
      jobs.get(number)?.heads.forEach((head, i) => {
        const { qrText: _, drawing, graduations: __, steps, ...rest } = head
        const told = steps.map(({ state: ___, owes, ...step }) => ({
          ...step,
          owes: owes.map(({ label, unit, points }) => ({
            label: label === step.label ? '' : label,
            unit,
            points,
          })),
        }))
        const given = words([rest, told, drawing.edgeDepths, drawing.cornerReadings, drawing.chamberReadings])
        const page = flat(pages[i] ?? '')
        expect(
          [...new Set(given)].filter((word) => !page.includes(flat(word))),
          `${number} head ${i + 1}`,
        ).toEqual([])
      })
    }
  })

  it('has a code that reads at print size, and a number that stands out on the plate in grey', async () => {
    for (const { of: number, bytes } of of('job-sheet')) {
      const heads = jobs.get(number)?.heads ?? []
      const codes = await greyPages(bytes, 300, { x: 170, y: 6, width: 45, height: 38 })
      const plates = await greyPages(bytes, 150, { x: 34, y: 12, width: 36, height: 18 })
      heads.forEach(({ qrText, tag }, i) => {
        const [code, plate] = [codes[i], plates[i]]
        if (!code || !plate) return expect.unreachable()
        if (qrText !== '') expect(decoded(code), `${number} ${tag}`).toBe(qrText)
        const { darkest, commonest } = tonesOf(plate)
        expect(commonest - darkest, `${number} ${tag}`).toBeGreaterThan(100)
      })
    }
  })
})

describe('every label of the demo shop', () => {
  it('has a code that reads at 300 dots an inch, alone and on a sheet', async () => {
    for (const { of: number, bytes } of of('label')) {
      const expected = (jobs.get(number)?.heads ?? [])
        .map(({ qrText }) => qrText)
        .filter((text) => text !== '')
      expect((await greyPages(bytes, 300)).map(decoded), number).toEqual(expected)
    }
    for (const { of: number, bytes } of of('label-sheet')) {
      const expected = (jobs.get(number)?.heads ?? [])
        .map(({ qrText }) => qrText)
        .filter((text) => text !== '')
      // The first label takes the last place of the first sheet; the second begins the next one.
      const last = (await greyPages(bytes, 300, { x: 136, y: 237, width: 70, height: 40 }))[0]
      expect(last && decoded(last), number).toBe(expected[0])
      expect((await readPdf(bytes)).pages.length, number).toBe(expected.length > 1 ? 2 : 1)
    }
  })
})
