import { beforeAll, describe, expect, it, vi } from 'vitest'
import { specOfRelease } from '@/lib/data/releases'
import { keepEstimateSchema } from '@/lib/schemas/bench'
import { emptyBench } from '@/lib/schemas/bench-question'
import { keepEstimate } from '@/lib/use-cases/cut-bench/keep-estimate'
import type { Paper } from '@/lib/papers/kept-paper'
import { printEstimate } from '@/lib/use-cases/cut-bench/print-estimate'
import { printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { printJobSheet, printOutsideSheet } from '@/lib/use-cases/papers/print-papers'
import { printHandOverSlip } from '@/lib/use-cases/papers/print-hand-over-slip'
import { printSpecSheet } from '@/lib/use-cases/papers/print-spec-sheet'
import { releaseVisit } from '@/lib/use-cases/release/release-visit'
import { chooseLogo } from '@/lib/use-cases/shop/choose-logo'
import { removeLogo } from '@/lib/use-cases/shop/remove-logo'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { imagesOf } from '@/tests/pdf/read-pdf'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, casting, counter, head, machinist, monday, owner, book } from '../jobs/counter-shop'
import { plain } from '../photos/pictures'
import { angledHead, outAndBack, readAngled } from '../release/angled-head'
import { bookAnother, makeFlatPlan, versionOf, workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

let shop: TestDatabase
let released: string
let returned: string
/** Papers that are made when they are asked for, and whether they leave the shop. */
let asked: Readonly<Record<string, { readonly print: () => Promise<Paper>; readonly leaves: boolean }>>
/** The sheet of a head that was released before there was a logo. */
let before: Uint8Array

const pictures = { first: '#204050', second: '#803020' }
const choose = async (colour: string, seen: string | null) =>
  (await chooseLogo(owner, { seen, bytes: await plain(60, 30, colour).png().toBuffer() }, at(monday))).sha256
const take = (seen: string) => removeLogo(owner, { seen }, at(monday))

beforeAll(async () => {
  shop = await testDatabase()
  released = await angledHead(shop)
  const orderId = await outAndBack(released, '20', '20 thou flat')
  await workThrough(released, [], (step, kind, point) =>
    kind === 'cc' && step.stepId === 'finished' ? '54.0' : readAngled(step, kind, point),
  )
  await releaseVisit(owner, { visitId: released, version: await versionOf(released), reason: '' }, at(monday))
  before = (await printSpecSheet(owner, released)).bytes
  const cracked = await book({ heads: [head(), head()] })
  returned = cracked.heads[0]?.visitId ?? ''
  await returnAsIs(owner, { visitId: returned, reason: 'Cracked through' }, at(monday))
  const { number } = await shop.client.job.findFirstOrThrow({ where: { visits: { some: { id: released } } } })
  await shop.client.handOver.create({
    data: {
      visitId: released,
      takenBy: 'Piers Oxley',
      side: 'left',
      partsBack: '',
      note: '',
      at: monday,
      byId: owner.personId,
    },
  })
  const question = { ...emptyBench(casting), used: false, targetCc: '61' }
  const estimate = await keepEstimate(
    counter,
    keepEstimateSchema.parse({ question, wayId: 'own:flat', angleIn: null, forWhom: 'Maren Holt', note: '' }),
    at(monday),
  )
  asked = {
    'outside sheet': { print: () => printOutsideSheet(counter, orderId, monday), leaves: true },
    estimate: { print: () => printEstimate(counter, estimate.id, monday), leaves: true },
    'hand-over slip': { print: () => printHandOverSlip(counter, number, monday), leaves: true },
    'job sheet': { print: () => printJobSheet(machinist, number, monday), leaves: false },
    labels: { print: () => printTagLabels(machinist, number, monday), leaves: false },
  }
})

const kinds = ['outside sheet', 'estimate', 'hand-over slip', 'job sheet', 'labels']
const imagesIn = async (paper: { bytes: Uint8Array | (() => Promise<Uint8Array>) }) =>
  imagesOf(typeof paper.bytes === 'function' ? await paper.bytes() : paper.bytes)

/** The colour in the middle of a paper's only picture. */
async function colourOf(paper: Parameters<typeof imagesIn>[0]): Promise<string | null> {
  const images = await imagesIn(paper)
  expect(images.length).toBeLessThanOrEqual(1)
  const [image] = images
  return image ? `#${Buffer.from(image.pixels.slice(0, 3)).toString('hex')}` : null
}

describe('a paper that leaves the shop', () => {
  it.each(kinds)('%s: another logo is another paper; without it is the one from before', async (kind) => {
    const { print, leaves } = asked[kind] ?? expect.unreachable(kind)
    const seen: [etag: string, colour: string | null][] = []
    const look = async () => {
      const paper = await print()
      seen.push([paper.etag, await colourOf(paper)])
    }
    await look()
    const first = await choose(pictures.first, null)
    await look()
    const second = await choose(pictures.second, first)
    await look()
    await take(second)
    await look()
    expect(seen.map(([, colour]) => colour)).toEqual(
      leaves ? [null, pictures.first, pictures.second, null] : [null, null, null, null],
    )
    expect(new Set(seen.map(([etag]) => etag)).size).toBe(leaves ? 3 : 1)
    expect(seen[3]?.[0]).toBe(seen[0]?.[0])
  })

  it('the sheet of a head that went back as it is has the logo of now', async () => {
    const sheet = async () => colourOf(await printSpecSheet(counter, returned))
    expect(await sheet()).toBeNull()
    const first = await choose(pictures.first, null)
    expect(await sheet()).toBe(pictures.first)
    await take(first)
    expect(await sheet()).toBeNull()
  })
})

describe('a spec sheet that was released', () => {
  const factsOf = async (visitId: string) =>
    specOfRelease(await shop.client.release.findFirstOrThrow({ where: { visitId } }))
  const sheet = async (visitId: string) => (await printSpecSheet(owner, visitId)).bytes

  it('before there was a logo stays without one, and is read as it was', async () => {
    const first = await choose(pictures.first, null)
    expect(Buffer.from(await sheet(released)).equals(Buffer.from(before))).toBe(true)
    expect(await imagesOf(before)).toEqual([])
    expect((await factsOf(released)).shop).toEqual({ name: 'Quay Street Heads', lines: [] })
    await take(first)
  })

  it('with a logo keeps it when the shop takes another or none', async () => {
    const job = await bookAnother({ ordered: ['flat-cut'] })
    const visitId = job.heads[0]?.visitId ?? ''
    await workThrough(visitId, ['flat-cut'])
    await makeFlatPlan(job)
    await workThrough(visitId)
    const first = await choose(pictures.first, null)
    await releaseVisit(owner, { visitId, version: await versionOf(visitId), reason: '' }, at(monday))
    expect((await factsOf(visitId)).shop.logo).toEqual({ sha256: first, widthPx: 60, heightPx: 30 })
    const then = await sheet(visitId)
    const second = await choose(pictures.second, first)
    expect(Buffer.from(await sheet(visitId)).equals(Buffer.from(then))).toBe(true)
    await take(second)
    expect(await colourOf({ bytes: await sheet(visitId) })).toBe(pictures.first)
  })
})
