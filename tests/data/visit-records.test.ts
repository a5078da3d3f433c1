import { expect, it } from 'vitest'
import { readVisits, visitInclude, type WhichVisits } from '@/lib/data/visit-records'
import { describeOnBoth, type TestDatabase } from '@/tests/setup/database'
import { statementsOf } from '@/tests/setup/statements'
import { casting } from '../use-cases/jobs/counter-shop'
import { makeFlatPlan, shopWithJob } from '../use-cases/release/whole-job'

type BookedHead = Awaited<ReturnType<typeof shopWithJob>>['heads'][number]

const at = new Date('2026-03-02T09:00:00.123Z')
const byId = 'p-owner'

/** Doubles whose shortest text is long, whole ones, the least there is. */
const awkward = [0.1 + 0.2, 1 / 3, 64, 0, 5e-324, 1e-7, -4.5000000000000009]

/** One row at least in every table that belongs to a visit, with every column that may be null both ways. */
async function fillUp(client: TestDatabase['client'], visitId: string, mateId: string): Promise<void> {
  const visit = await client.visit.findUniqueOrThrow({ where: { id: visitId }, include: { pair: true } })
  const vendor = { phone: '', email: '', address: '', services: '', version: 1, createdAt: at }
  await client.vendor.create({ data: { ...vendor, id: 'v-1', name: 'Peel Valley Crack Repair', boxHeads: 4 } })
  await client.outsideOrder.create({
    data: {
      id: 'o-1',
      number: 'O-0001',
      vendorId: 'v-1',
      instructions: '',
      scope: 'pressure',
      finishesToSize: false,
      freight: '',
      tracking: '',
      createdAt: at,
      byId,
    },
  })
  const line = { orderId: 'o-1', comesWith: '', confirmed: '', marksTyped: '', marksRead: '', redoCost: '' }
  await client.outsideOrderVisit.createMany({
    data: [
      { ...line, id: 'ov-1', visitId, angleIn: 1 / 3, flatIn: 0, receivedAt: at, receivedById: byId },
      { ...line, id: 'ov-2', visitId: mateId, angleIn: 0, flatIn: 0.1 + 0.2, seatsIn: false },
    ],
  })
  const [plan] = await client.planVersion.findMany({ where: { pairId: visit.pairId } })
  const planId = plan?.id ?? ''
  await client.planException.create({
    data: { id: 'x-1', planId, visitId, flatIn: 0.1 + 0.2, angleIn: 0, reason: 'warped' },
  })
  await client.planAcceptance.create({ data: { id: 'a-1', planId, by: 'Reba', how: 'phone', at, recordedById: byId } })
  const finding = {
    visitId,
    what: 'crack at 3',
    addsWork: '',
    reportedAt: at,
    reportedById: byId,
    askedHow: '',
    answeredBy: '',
  }
  await client.finding.createMany({
    data: [
      { ...finding, id: 'f-1' },
      {
        ...finding,
        id: 'f-2',
        stepId: 'check-in',
        priceMinor: 12_050,
        askedAt: at,
        askedById: byId,
        answer: 'no',
        answeredAt: at,
      },
    ],
  })
  const hold = { visitId, reason: 'thin', openedAt: at, openedById: byId, decisionNote: '', customerYes: '' }
  await client.hold.createMany({
    data: [
      { ...hold, id: 'h-1' },
      { ...hold, id: 'h-2', decision: 'rework', decidedAt: at, decidedById: byId },
      { ...hold, id: 'h-3', visitId: mateId },
    ],
  })
  await client.partsWait.create({
    data: {
      id: 'w-1',
      visitId,
      stepId: 'assembly',
      occurrence: '',
      what: 'springs',
      fromWhom: 'Tern',
      openedAt: at,
      openedById: byId,
    },
  })
  await client.waiver.create({
    data: {
      id: 'wv-1',
      visitId,
      stepId: 'finish',
      occurrence: '',
      gap: 'step:finish',
      what: 'finish',
      reason: 'late',
      touchesCustomer: true,
      at,
      byId,
    },
  })
  await client.file.create({ data: { sha256: 'ab'.repeat(32), size: 3, type: 'image/png', createdAt: at } })
  await client.photo.create({
    data: {
      id: 'ph-1',
      visitId,
      stepId: 'check-in',
      sha256: 'ab'.repeat(32),
      widthPx: 4,
      heightPx: 3,
      caption: 'ü “x”',
      at,
      byId,
    },
  })
  const release = { visitId, facts: '{}', pdfSha256: 'cd'.repeat(32), at, byId, reason: '' }
  await client.release.createMany({
    data: [
      { ...release, id: 'r-1', revision: 1 },
      { ...release, id: 'r-2', revision: 2 },
    ],
  })
  await client.returnedAsIs.create({ data: { visitId, reason: 'asked', notDone: '[]', at, byId } })
  await client.handOver.create({ data: { visitId, takenBy: 'Reba', side: '', partsBack: '', note: '', at, byId } })
  await client.castingOutline.create({ data: { id: 'ol-1', castingId: casting, form: 'any', points: '0 0' } })
  await client.castingBolt.createMany({
    data: awkward.map((xIn, place) => ({
      id: `b-${place}`,
      castingId: casting,
      label: String(place),
      xIn,
      blind: place % 2 === 0,
    })),
  })
  await client.readingSet.create({
    data: {
      id: 's-odd',
      visitId,
      stepId: 'chambers',
      occurrence: '',
      eventSeq: 3,
      conditions: '{}',
      takenAt: at,
      recordedAt: at,
      byId,
    },
  })
  await client.reading.createMany({
    data: awkward.map((value, place) => ({
      id: `rd-${place}`,
      setId: 's-odd',
      kind: 'cc',
      point: String(place),
      value,
      text: '',
      unit: '',
      reason: '',
    })),
  })
}

const ways = (visit: { id: string; jobId: string; pairId: string; headId: string }): readonly WhichVisits[] => [
  { ids: [visit.id] },
  { jobId: visit.jobId },
  { pairId: visit.pairId },
  { pairsOf: [visit.id] },
  { headId: visit.headId },
]

const wheres = ['id', 'jobId', 'pairId', 'pairId', 'headId'] as const

describeOnBoth('the record of a visit', (open, provider) => {
  it('is to the last bit what Prisma gives, whichever way it is asked for, in two statements', async () => {
    const database = await open()
    const { client } = database
    const job = await shopWithJob(database)
    const [first, second] = job.heads as [BookedHead, BookedHead]
    await makeFlatPlan(job)
    await fillUp(client, first.visitId, second.visitId)
    const visit = await client.visit.findUniqueOrThrow({ where: { id: first.visitId } })
    for (const [place, which] of ways(visit).entries()) {
      const key = wheres[place] ?? 'id'
      const wanted = await client.visit.findMany({
        where: { [key]: visit[key] },
        include: visitInclude,
        orderBy: { position: 'asc' },
      })
      const sent = await statementsOf(async () => {
        expect((await readVisits(client, which)).visits).toEqual(wanted)
      })
      if (provider === 'sqlite') expect(sent).toHaveLength(2)
    }
    const [record] = (await readVisits(client, { ids: [first.visitId] })).visits
    expect(record?.readings.find(({ id }) => id === 's-odd')?.points.map(({ value }) => value)).toEqual(awkward)
  }, 240_000)

  it('is found inside the transaction that wrote it, and there is none of a visit that is not there', async () => {
    const database = await open()
    const [first] = (await shopWithJob(database)).heads as [BookedHead]
    await database.client.$transaction(async (tx) => {
      await tx.visit.update({ where: { id: first.visitId }, data: { rackPlace: 'B 4' } })
      const { visits } = await readVisits(tx, { ids: [first.visitId] })
      expect(visits.map(({ rackPlace }) => rackPlace)).toEqual(['B 4'])
    })
    expect((await readVisits(database.client, { ids: [] })).visits).toEqual([])
    expect((await readVisits(database.client, { pairsOf: ['nobody'] })).visits).toEqual([])
  })
})
