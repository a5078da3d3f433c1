import { beforeAll, describe, expect, it, vi } from 'vitest'
import { receiveOutsideSchema, sendOutsideSchema } from '@/lib/schemas/outside'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import { headOfTag } from '@/lib/use-cases/papers/head-of-tag'
import { notDoneInShort } from '@/lib/dossier/not-done'
import { printTagLabels } from '@/lib/use-cases/papers/print-labels'
import { printJobSheet, printOutsideSheet } from '@/lib/use-cases/papers/print-papers'
import { printSpecSheet } from '@/lib/use-cases/papers/print-spec-sheet'
import { releaseDraft } from '@/lib/use-cases/release/release-draft'
import { returnAsIs } from '@/lib/use-cases/visits/return-as-is'
import { readPdf } from '@/tests/pdf/read-pdf'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, counter, machinist, monday, owner, refusalOf } from '../jobs/counter-shop'
import { acceptNewest, bookAnother, makePlan, shopWithJob, workThrough, type Otherwise } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

const vendorId = '019caed9-4300-7000-8000-00000000000a'

/**
 * Corners of a head 7 in wide that was 4.500 thick. An angle part of 0.063 tilts the deck by atan(0.063/7) = 0.5157°,
 * cos 0.9999595; square to the new deck a thickness t reads t·cos. After the angle cut: 4.500·cos = 4.4998 at the intake
 * edge, 4.437·cos = 4.4368 at the exhaust edge; after 0.020 flat besides, 4.480·cos = 4.4798 and 4.417·cos = 4.4168.
 */
const corners: Readonly<Record<string, readonly [intake: string, exhaust: string]>> = {
  'arrival-figures': ['4.4998', '4.4368'],
  finished: ['4.4798', '4.4168'],
}

/** 10 cc less: 54 cc. */
const tilted: Otherwise = (step, kind, point) => {
  const edges = kind === 'thickness' ? corners[step.stepId] : undefined
  if (edges) return point.startsWith('intake') ? edges[0] : edges[1]
  if (kind === 'cc' && step.stepId === 'finished') return '54.0'
  return kind === 'cut-depth' ? '0.0200' : undefined
}

/** A head cut at an angle by a vendor and to size in house, done but for its release. */
async function tiltedHead(database: TestDatabase) {
  await shopWithJob(database)
  await database.client.vendor.create({
    data: {
      id: vendorId,
      name: 'Tarn Grinding',
      phone: '',
      email: '',
      address: '9 Mill Lane',
      services: '',
      createdAt: monday,
    },
  })
  const job = await bookAnother({ ordered: ['angle-cut', 'flat-cut'], targetCc: '54.0' })
  const visitId = job.heads[0]?.visitId ?? ''
  await workThrough(visitId, ['angle-cut'])
  // 60 thou at the centre, 0.635 of the width: 20 flat and (60 − 20)/0.635 = 63 at the edge.
  await makePlan(job, { kind: 'angle-flat', splitBy: 'flat', flatIn: '0.020' })
  await acceptNewest(job)
  const order = await sendOutside(
    owner,
    sendOutsideSchema.parse({
      vendorId,
      scope: ['angle-cut'],
      heads: [{ visitId, angleIn: '', flatIn: '', comesWith: 'dowels are in' }],
      finishesToSize: false,
      instructions: 'Call before you start.',
      freight: '',
      tracking: '',
      promisedOn: '2026-03-12',
    }),
    at(monday),
  )
  return { job, visitId, order }
}

describe('papers of an angle cut by a vendor', () => {
  let made: Awaited<ReturnType<typeof tiltedHead>>
  beforeAll(async () => {
    made = await tiltedHead(await testDatabase())
  })

  it('tell the vendor what to cut, from which edge, and what to leave', async () => {
    const { bytes, name } = await printOutsideSheet(machinist, made.order.orderId, monday)
    const { text } = await readPdf(await bytes())
    const words = text.replace(/\s+/g, ' ')
    for (const part of [
      made.order.number,
      'Tarn Grinding',
      '9 Mill Lane',
      'Angle cut: 0.0630 in at the exhaust edge',
      'Cut exactly these figures, no more. We take another 0.0200 in flat here afterwards.',
      'dowels are in',
      'thickness at the four corners',
      'Call before you start.',
      // By hand: (60 − 20)/0.635 = 62.99 thou over 7 in is atan 0.0089989 = 0.5156°.
      'angle of 0.516° over a milled width of 7.000 in',
      'Take the metal off the exhaust edge',
    ])
      expect(words).toContain(part)
    expect(words).not.toContain('Tamsin Rook')
    expect(name).toBe(`outside-${made.order.number}.pdf`)
    expect((await refusalOf(printOutsideSheet(machinist, vendorId, monday))).code).toBe('not-found')
  })

  it('put the plan, the steps and the blanks on the job sheet', async () => {
    const { bytes } = await printJobSheet(machinist, made.job.number, monday)
    const { text } = await readPdf(await bytes())
    const words = text.replace(/\s+/g, ' ')
    for (const part of [
      made.job.heads[0]?.tag ?? '',
      made.job.heads[1]?.tag ?? '',
      'Angle cut, then flat cut',
      '0.0830',
      'Angle cut: internal: mind the boss',
      'at the deep edge alone',
      '0.0200 in flat, off the new deck, in all',
      `at Tarn Grinding, order ${made.order.number}`,
      'Square the bolt seats',
      'works on this machine only',
      '64.2',
    ])
      expect(words).toContain(part)
  })

  it('print a label of 62 × 29 mm a head', async () => {
    const { sizes, pages } = await readPdf(await (await printTagLabels(counter, made.job.number, monday)).bytes())
    expect(sizes).toEqual([
      [62, 29],
      [62, 29],
    ])
    expect(pages[1]).toContain(made.job.heads[1]?.tag)
  })

  it('say on the spec sheet what was cut, by the corners, and by whom', async () => {
    const { visitId, order } = made
    const back = { visitId, confirmed: ['angle-cut'], seatsIn: true, marksTyped: '63', marksRead: '0.063' }
    await receiveOutside(owner, receiveOutsideSchema.parse({ orderId: order.orderId, heads: [back] }), at(monday))
    await workThrough(visitId, ['hand-over'], tilted)
    const { spec } = await releaseDraft(owner, { visitId, reason: '' }, monday)
    expect(spec.cuts.map(({ what, planned, measured, by }) => ({ what, planned, measured, by }))).toEqual([
      {
        what: 'Angle cut, deep at the exhaust edge',
        planned: '0.0630 in at the exhaust edge',
        measured: 'flat 0.0000 in, angle part 0.0630 in, 0.52°',
        by: `Tarn Grinding, order ${order.number}`,
      },
      { what: 'Flat cut', planned: '0.0200 in', measured: '0.0200 in', by: 'in house' },
      {
        what: 'All deck cuts together',
        planned: 'flat 0.0200 in, angle part 0.0630 in',
        measured: 'flat 0.0200 in, angle part 0.0630 in, 0.52°',
        by: '',
      },
    ])
    expect(spec.removedSinceNew).toBe('0.0830 in at the deepest, over all visits')
    expect(spec.drawing).toMatchObject({
      deepEdge: 'exhaust',
      edgeDepths: { intake: '0.0200 in', exhaust: '0.0830 in' },
    })
    // What the bench wrote of itself, "customer told", is told to the customer as what to do.
    const told = spec.groups.flatMap(({ lines }) => lines.map(({ value }) => value)).join('; ')
    expect(told).toContain('check the clearance at assembly')
    expect(told).not.toMatch(/customer/i)
    // 0.52° is over the shop's half a degree; no piston figure is known, but the bench wrote "customer told".
    expect(spec.cautions.join(' ')).toMatch(/angle of 0\.52°.*makers’ instructions/)
    expect(spec.cautions.join(' ')).toMatch(/Piston to valve: check the clearance at assembly/)
  })
})

describe('a head that goes back as it is', () => {
  it('has a paper that lists what was not done, and claims no cut', async () => {
    const job = await shopWithJob(await testDatabase())
    const visitId = job.heads[0]?.visitId ?? ''
    expect((await refusalOf(printSpecSheet(counter, visitId))).code).toBe('not-found')
    await workThrough(visitId, ['flat-cut'])
    await returnAsIs(counter, { visitId, reason: 'the customer sold the car' }, at(monday))
    const { bytes, name } = await printSpecSheet(counter, visitId)
    const words = (await readPdf(bytes)).text.replace(/\s+/g, ' ')
    for (const part of [
      'Returned as is by Odile Marsh',
      'Flat cut: not done',
      'the customer sold the car',
      'The deck was not cut',
    ]) {
      expect(words).toContain(part)
    }
    expect(words).not.toMatch(/deck came|cut 0\.0|Measure chambers: not done/)
    expect(name).toBe(`returned-${job.heads[0]?.tag}.pdf`)
  })

  it('lets a step that was not done stand for its readings, in what was written down long ago too', () => {
    expect(
      notDoneInShort([
        'Measure finished is not done',
        'Measure finished: no plug yet',
        'chamber 1 has no finished cc',
        'Wrap: no note yet',
      ]),
    ).toEqual(['Measure finished is not done', 'Wrap: no note yet'])
  })
})

describe('a tag’s address', () => {
  it('finds the head however the tag is typed, also by a tag it wore before, for whoever works here', async () => {
    const database = await testDatabase()
    const job = await shopWithJob(database)
    const { headId, tag } = job.heads[0] ?? { headId: '', tag: '' }
    for (const typed of [tag, tag.toLowerCase(), tag.replace('T-0', '')])
      expect(await headOfTag(machinist, typed)).toBe(headId)
    await database.client.tagAssignment.updateMany({
      where: { headId },
      data: { activeNumber: null, to: monday },
    })
    expect(await headOfTag(machinist, tag)).toBe(headId)
    for (const unknown of ['T-9999', '<script>', '']) expect(await headOfTag(machinist, unknown)).toBeNull()
  })
})
