import type { PrismaClient } from '@/prisma/generated/sqlite/client'

const at = new Date('2026-03-02T08:00:00Z')

/** One row in every table that is only added to, with what they hang on. */
export async function factRows(client: PrismaClient): Promise<void> {
  await client.customer.create({ data: { id: 'customer', createdAt: at } })
  await client.job.create({
    data: {
      id: 'job',
      number: '26-0001',
      customerId: 'customer',
      preset: 'size',
      partsPlace: '',
      note: '',
      createdAt: at,
      byId: 'person',
    },
  })
  await client.pair.create({ data: { id: 'pair', jobId: 'job' } })
  await client.head.create({
    data: {
      id: 'head',
      stamp: '',
      marks: '',
      marksLower: '',
      material: 'iron',
      chamberForm: 'as-cast',
      newThicknessText: '',
      note: '',
      createdAt: at,
    },
  })
  await client.visit.create({
    data: {
      id: 'visit',
      jobId: 'job',
      headId: 'head',
      pairId: 'pair',
      position: 1,
      source: 'customer',
      used: true,
      side: '',
      cameWith: '',
      ownedBy: '',
      rackPlace: '',
      presentText: '',
      presentUnit: '',
      targetText: '',
      targetUnit: '',
      createdAt: at,
    },
  })
  await historyRows(client)
  await moneyAndOrderRows(client)
}

async function historyRows(client: PrismaClient): Promise<void> {
  const step = { stepId: 'chambers', occurrence: '' }
  await client.auditEntry.create({
    data: {
      at,
      actorId: 'person',
      action: 'a',
      subject: 'visit',
      subjectId: 'visit',
      changes: '{}',
      settingsVersion: 1,
    },
  })
  await client.operation.create({
    data: { id: 'operation', actorId: 'person', hash: 'h', result: 'null', at },
  })
  await client.visitEvent.create({
    data: { visitId: 'visit', kind: 'done', ...step, note: '', at, byId: 'person', settingsVersion: 1 },
  })
  await client.readingSet.create({
    data: {
      id: 'set',
      visitId: 'visit',
      ...step,
      eventSeq: 1,
      conditions: '{}',
      takenAt: at,
      recordedAt: at,
      byId: 'person',
      points: {
        create: { id: 'reading', kind: 'cc', point: '1', value: 64.2, text: '64.2', unit: 'cc', reason: '' },
      },
    },
  })
  await client.waiver.create({
    data: {
      id: 'waiver',
      visitId: 'visit',
      ...step,
      gap: 'g',
      what: 'w',
      reason: 'r',
      touchesCustomer: false,
      at,
      byId: 'person',
    },
  })
  await client.release.create({
    data: {
      id: 'release',
      visitId: 'visit',
      revision: 1,
      facts: '{}',
      pdfSha256: '',
      at,
      byId: 'person',
      reason: '',
    },
  })
}

async function moneyAndOrderRows(client: PrismaClient): Promise<void> {
  await client.planVersion.create({
    data: {
      id: 'plan',
      pairId: 'pair',
      number: 1,
      kind: 'flat',
      inputs: '{}',
      results: '{}',
      reason: '',
      settingsVersion: 1,
      createdAt: at,
      byId: 'person',
      acceptances: { create: { id: 'yes', by: 'customer', how: 'phone', at, recordedById: 'person' } },
    },
  })
  await client.estimate.create({
    data: {
      id: 'estimate',
      number: 'E-1',
      forWhom: '',
      note: '',
      question: '{}',
      answer: '{}',
      createdAt: at,
      byId: 'person',
    },
  })
  await client.payment.create({
    data: { id: 'payment', jobId: 'job', kind: 'deposit', minor: 5000, how: 'cash', at, byId: 'person' },
  })
  await client.paymentVoid.create({ data: { paymentId: 'payment', reason: 'typed twice', at, byId: 'person' } })
  const sums = { netMinor: 0, taxMinor: 0, totalMinor: 0 }
  await client.moneyPaper.create({
    data: {
      ...{ id: 'paper', kind: 'invoice', number: 'INV-1', jobId: 'job', customerId: 'customer', facts: '{}' },
      ...{ ...sums, reason: '', at, byId: 'person' },
    },
  })
  await client.file.create({ data: { sha256: 'f0', size: 1, type: 'application/pdf', createdAt: at } })
  await client.moneyPaperFile.create({ data: { paperId: 'paper', sha256: 'f0', at } })
  await client.callEntry.create({ data: { id: 'call', jobId: 'job', at, byId: 'person', text: 'asked' } })
  await client.vendor.create({
    data: { id: 'vendor', name: 'v', phone: '', email: '', address: '', services: '', createdAt: at },
  })
  await client.outsideOrder.create({
    data: {
      id: 'order',
      number: 'O-1',
      vendorId: 'vendor',
      instructions: '',
      scope: 'angle-cut',
      finishesToSize: false,
      freight: '',
      tracking: '',
      createdAt: at,
      byId: 'person',
      promises: { create: { id: 'promise', promisedOn: '2026-03-20', note: '', at, byId: 'person' } },
    },
  })
  await client.supplyOrder.create({
    data: {
      id: 'supply',
      number: 'S-1',
      vendorId: 'vendor',
      createdAt: at,
      byId: 'person',
      promises: { create: { id: 'supply-promise', promisedOn: '2026-03-20', note: '', at, byId: 'person' } },
    },
  })
}
