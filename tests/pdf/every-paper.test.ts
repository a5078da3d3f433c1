import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { isTag } from '@/lib/core/shop/tag-number'
import { estimateAnswer } from '@/lib/data/stored/estimate'
import { jobSheet, type JobSheetData } from '@/lib/pdf/job-sheet'
import { loadDossiers } from '@/lib/dossier/dossier'
import { printEstimate } from '@/lib/use-cases/cut-bench/print-estimate'
import { printMoneyPaper } from '@/lib/use-cases/money/print-money-paper'
import { printClaimTicket } from '@/lib/use-cases/papers/print-claim-ticket'
import { printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { jobSheetData, printJobSheet, printOutsideSheet } from '@/lib/use-cases/papers/print-papers'
import { printHandOverSlip } from '@/lib/use-cases/papers/print-hand-over-slip'
import { printSpecSheet } from '@/lib/use-cases/papers/print-spec-sheet'
import type { TestDatabase } from '@/tests/setup/database'
import { demoMoment as now, filledDemo } from '@/tests/setup/demo-shop'
import { readPdf } from './read-pdf'
import { clearEdgeMm, decoded, greyPages, structureOf, tonesOf } from './rendered'
import { setting } from './sample-papers'
import { cutCautionText } from '@/lib/words/cut-cautions'

vi.setConfig({ testTimeout: 240_000, hookTimeout: 300_000 })

const owner: Actor = {
  personId: '019caed9-4300-7000-8000-0000000000ff',
  name: 'Una Test',
  roles: ['owner'],
  grants: [],
}

const kinds = [
  'job-sheet',
  'label',
  'label-sheet',
  'hand-over-slip',
  'estimate',
  'outside-sheet',
  'spec-sheet',
  'claim-ticket',
  'invoice',
  'credit-note',
  'receipt',
] as const
type Kind = (typeof kinds)[number]
type Printed = { readonly kind: Kind; readonly of: string; readonly bytes: Uint8Array }

let shop: TestDatabase
const papers: Printed[] = []
/** What the job sheets were made from, by job. */
const jobs = new Map<string, JobSheetData>()

beforeAll(async () => {
  vi.stubEnv('NEXTAUTH_SECRET', 'a secret of a test, which is long enough')
  vi.stubEnv('BRASSTAG_URL', 'http://192.168.1.20:3000')
  shop = await filledDemo()
  const { client } = shop
  const made = async (kind: Kind, of: string, paper: { bytes: Uint8Array | (() => Promise<Uint8Array>) }) => {
    const { bytes } = paper
    papers.push({ kind, of, bytes: typeof bytes === 'function' ? await bytes() : bytes })
  }
  for (const { id, number } of await client.job.findMany({ orderBy: { number: 'asc' } })) {
    const heads = await loadDossiers(client, { jobId: id })
    jobs.set(number, await jobSheetData(client, number))
    await made('job-sheet', number, await printJobSheet(owner, number, now))
    if (heads.some(({ visit }) => visit.handOver))
      await made('hand-over-slip', number, await printHandOverSlip(owner, number, now))
    if (!heads.some(({ label }) => isTag(label))) continue
    await made('label', number, await printTagLabels(owner, number, now))
    if (of('claim-ticket').length === 0) await made('claim-ticket', number, await printClaimTicket(owner, number, now))
    if (heads.length < 2) continue
    await made('label-sheet', number, await printTagLabels(owner, number, now, { first: 27, tags: [] }))
  }
  for (const { id, number } of await client.outsideOrder.findMany()) {
    await made('outside-sheet', number, await printOutsideSheet(owner, id, now))
  }
  for (const { id, number } of await client.estimate.findMany()) {
    await made('estimate', number, await printEstimate(owner, id, now))
  }
  for (const { id, kind, number } of await client.moneyPaper.findMany({ distinct: 'kind' })) {
    await made(kind as Kind, number, await printMoneyPaper(owner, id))
  }
  for (const { id } of await client.visit.findMany({
    where: { OR: [{ releases: { some: {} } }, { returned: { isNot: null } }] },
  })) {
    await made('spec-sheet', id, await printSpecSheet(owner, id))
  }
})

const of = (kind: Kind) => papers.filter((paper) => paper.kind === kind)
/** Every word of it, however deep. */
const words = (value: unknown): string[] => {
  if (typeof value === 'string') return value.split(/\s+/)
  if (value === null || typeof value !== 'object') return []
  return Object.values(value).flatMap(words)
}
const notOn = (page: string, wanted: readonly string[]) => [
  ...new Set(wanted.filter((word) => !page.includes(flat(word)))),
]
/** As it reads: a font has one letter for the micro sign and the Greek mu. */
const flat = (text: string) => text.normalize('NFKC').replace(/\s+/g, ' ')

describe('every paper of the demo shop', () => {
  it('is there', () => {
    expect(of('job-sheet').length).toBeGreaterThanOrEqual(19)
    for (const kind of kinds) expect(of(kind).length, kind).toBeGreaterThan(0)
  })

  it('is a sound file', async () => {
    for (const { kind, of: what, bytes } of papers) {
      expect(await structureOf(bytes), `${kind} ${what}`).toContain('No syntax or stream encoding errors found')
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

/** The pages of one head: each begins with its tag. */
const pagesOf = (pages: readonly string[], tag: string) => pages.map(flat).filter((page) => page.startsWith(tag))

describe('every job sheet of the demo shop', () => {
  it('is one page a head, two where the benches need many figures, in the order of the heads', async () => {
    for (const [number, data] of jobs) {
      for (const paper of ['letter', 'a4'] as const) {
        const { pages } = await readPdf(await jobSheet(data, { ...setting, paper }))
        const order = pages.map((page) => data.heads.findIndex(({ tag }) => flat(page).startsWith(tag)))
        expect(order, `${number} ${paper}`).toEqual([...order].sort((a, b) => a - b))
        for (const { tag } of data.heads) {
          const [first, ...more] = pagesOf(pages, tag)
          expect(first, `${number} ${paper} ${tag}`).not.toContain('continued')
          expect(more.length, `${number} ${paper} ${tag}`).toBeLessThanOrEqual(1)
          for (const page of more) expect(page).toMatch(/^\S.* · job \S+, continued/)
        }
      }
    }
  })

  it('has nothing live on it of a head that nobody works on: no plan figure, no blank', () => {
    const stopped = [...jobs.values()].flatMap(({ heads }) => heads).filter(({ stop }) => stop.length > 0)
    expect(stopped.some(({ stop }) => stop[0]?.startsWith('STOP. On hold: '))).toBe(true)
    for (const { tag, planFigures, planNotes, waiting, steps } of stopped) {
      expect([...planFigures, ...planNotes, ...waiting], tag).toEqual([])
      expect(steps.map(({ wanted, note }) => wanted + note).join(''), tag).toBe('')
      const points = steps.flatMap(({ owes }) => owes.flatMap((owed) => owed.points))
      expect(
        points.filter(({ value }) => value === null),
        tag,
      ).toEqual([])
    }
  })

  it('draws the section of every head that has a cut', async () => {
    let drawn = 0
    for (const { of: number, bytes } of of('job-sheet')) {
      const { pages } = await readPdf(bytes)
      jobs.get(number)?.heads.forEach(({ drawing, tag }) => {
        const cut = drawing.cutKind !== 'none'
        drawn += Number(cut)
        const [first] = pagesOf(pages, tag)
        expect(first?.includes('depths drawn larger than they are'), `${number} ${tag}`).toBe(cut)
      })
    }
    expect(drawn).toBeGreaterThan(5)
  })

  it('has every figure and every word of what is known of the head', async () => {
    for (const { of: number, bytes } of of('job-sheet')) {
      const { pages } = await readPdf(bytes)
      jobs.get(number)?.heads.forEach((head) => {
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
        const page = pagesOf(pages, head.tag).join(' ')
        expect(notOn(page, given), `${number} ${head.tag}`).toEqual([])
      })
    }
  })

  it('has a code that reads at print size, and a number that stands out on the plate in grey', async () => {
    for (const { of: number, bytes } of of('job-sheet')) {
      const heads = jobs.get(number)?.heads ?? []
      const pages = (await readPdf(bytes)).pages.map(flat)
      const codes = await greyPages(bytes, 300, { x: 170, y: 6, width: 45, height: 38 })
      const plates = await greyPages(bytes, 150, { x: 34, y: 12, width: 36, height: 18 })
      heads.forEach(({ qrText, tag }) => {
        const first = pages.findIndex((page) => page.startsWith(tag))
        const [code, plate] = [codes[first], plates[first]]
        if (!code || !plate) return expect.unreachable()
        if (qrText !== '') expect(decoded(code), `${number} ${tag}`).toBe(qrText)
        const { darkest, commonest } = tonesOf(plate)
        expect(commonest - darkest, `${number} ${tag}`).toBeGreaterThan(100)
      })
    }
  })
})

describe('every outside sheet of the demo shop', () => {
  it('has the vendor, every head with its code, and every figure of the order as it stands in the book', async () => {
    const orders = await shop.client.outsideOrder.findMany({
      include: {
        vendor: true,
        visits: { include: { visit: { include: { head: { include: { tags: { where: { to: null } } } } } } } },
      },
    })
    for (const { of: number, bytes } of of('outside-sheet')) {
      const order = orders.find((one) => one.number === number)
      if (!order) return expect.unreachable()
      const { vendor, visits, instructions } = order
      const page = flat((await readPdf(bytes)).text)
      const told = [vendor.name, vendor.phone, vendor.address, instructions, ...visits.map((line) => line.comesWith)]
      expect(notOn(page, told.flatMap(words)), number).toEqual([])
      const depths = visits.flatMap(({ angleIn, flatIn }) => [angleIn, flatIn, angleIn + flatIn])
      const figures = depths.filter((depth) => depth > 0).map((depth) => depth.toFixed(4))
      const tags = visits.map(({ visit }) => visit.head.tags[0]?.number ?? 'no tag')
      expect(notOn(page, [number, ...tags, ...figures]), number).toEqual([])
      // Holes that the angle makes too tight are slotted here: a vendor who is not to do it must not read of it.
      if (!order.scope.includes('bolt-fit')) expect(page, number).not.toMatch(/slot/i)
      // A head's page has its code; where its figures need a second one, that has none.
      const codes = (await greyPages(bytes, 120)).map(decoded).filter((code) => code !== null)
      expect(codes, number).toEqual(tags.map((tag) => `http://192.168.1.20:3000/t/${tag}`))
    }
  })
})

describe('every hand-over slip of the demo shop', () => {
  const money = (minor: number) =>
    new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(minor / 100)

  /** Demo lines are whole pieces or whole tenths of an hour at whole dollars. */
  const netOf = (line: { quantityThousandths: number; unitMinor: number }) =>
    Math.round((line.quantityThousandths * line.unitMinor) / 1000)

  it('has every line and payment of the book, and its sums come out', async () => {
    for (const { of: number, bytes } of of('hand-over-slip')) {
      const { id } = await shop.client.job.findFirstOrThrow({ where: { number } })
      const prices = await shop.client.priceLine.findMany({ where: { jobId: id, endedAt: null } })
      const payments = await shop.client.payment.findMany({ where: { jobId: id } })
      const page = flat((await readPdf(bytes)).text)
      const amounts = prices.flatMap((line) => [line.unitMinor, netOf(line)])
      expect(
        notOn(page, [
          ...prices.flatMap(({ text }) => words(text)),
          ...amounts.map(money),
          ...payments.map(({ minor }) => money(minor)),
        ]),
        number,
      ).toEqual([])
      const sum = (label: string) => {
        const cents = new RegExp(`${label} \\$([\\d,]+)\\.(\\d\\d)`).exec(page)
        return Number(`${cents?.[1]?.replace(',', '')}${cents?.[2]}`)
      }
      const paid = payments.reduce((all, { kind, minor }) => all + (kind === 'refund' ? -minor : minor), 0)
      expect(sum('Net'), number).toBe(prices.reduce((all, line) => all + netOf(line), 0))
      expect(sum('Net') + sum('Tax'), number).toBe(sum('Total'))
      const left = sum('Total') - paid
      if (left === 0) expect(page, number).toContain('Paid in full')
      else expect(Math.abs(left), number).toBe(sum(left > 0 ? 'To pay' : 'We owe you'))
    }
  })
})

describe('every estimate of the demo shop', () => {
  it('is one page on either paper, with every figure and word of the answer that is kept', async () => {
    for (const paper of ['a4', 'letter'] as const) {
      await shop.client.shop.updateMany({ data: { paper } })
      for (const { id, number, answer, forWhom, note } of await shop.client.estimate.findMany()) {
        const { bytes } = await printEstimate(owner, id, now)
        const { pages, sizes } = await readPdf(await bytes())
        expect(sizes, number).toEqual([paper === 'a4' ? [210, 297] : [215.9, 279.4]])
        const { title, start, effort, lines, groups, unknown, steps, cautions, priceMinor } = estimateAnswer.read(
          answer,
          id,
        )
        // What is not known is told within a sentence: its first letter is a small one.
        const labels = steps.map(({ label }) => label)
        const told = [title, start, effort, lines, groups, labels, cautions.map(cutCautionText), forWhom, note].flatMap(
          words,
        )
        const page = flat(pages.join(' '))
        expect(notOn(page, [...told, ...unknown.flatMap(({ needs }) => words(needs)), number]), number).toEqual([])
        expect(
          notOn(
            page.toLowerCase(),
            unknown.map(({ label }) => label.toLowerCase()),
          ),
          number,
        ).toEqual([])
        expect(page, number).toContain(`$${((priceMinor ?? NaN) / 100).toFixed(2)}`)
      }
    }
  })
})

describe('every spec sheet of the demo shop', () => {
  it('is two pages; one where a head went back as it came', async () => {
    const returned = new Set((await shop.client.returnedAsIs.findMany()).map(({ visitId }) => visitId))
    expect(returned.size).toBeGreaterThan(0)
    for (const { of: visit, bytes } of of('spec-sheet')) {
      expect((await readPdf(bytes)).pages.length, visit).toBe(returned.has(visit) ? 1 : 2)
    }
  })
})

describe('every label of the demo shop', () => {
  it('has a code that reads at 300 dots an inch, alone and on a sheet', async () => {
    for (const { of: number, bytes } of of('label')) {
      const expected = (jobs.get(number)?.heads ?? []).map(({ qrText }) => qrText).filter((text) => text !== '')
      expect((await greyPages(bytes, 300)).map(decoded), number).toEqual(expected)
    }
    for (const { of: number, bytes } of of('label-sheet')) {
      const expected = (jobs.get(number)?.heads ?? []).map(({ qrText }) => qrText).filter((text) => text !== '')
      // The first label takes the last place of the first sheet; the second begins the next one.
      const last = (await greyPages(bytes, 300, { x: 136, y: 237, width: 70, height: 40 }))[0]
      expect(last && decoded(last), number).toBe(expected[0])
      expect((await readPdf(bytes)).pages.length, number).toBe(2)
    }
  })
})
