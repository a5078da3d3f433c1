import { describe, expect, it } from 'vitest'
import { auditChanges } from '@/lib/data/stored/records'
import { changeEngineSchema, changeJobSchema, changeOrderedWorkSchema } from '@/lib/schemas/job'
import { changeEngine } from '@/lib/use-cases/jobs/change-engine'
import { changeJob } from '@/lib/use-cases/jobs/change-job'
import { changeOrderedWork } from '@/lib/use-cases/jobs/change-ordered-work'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { testDatabase } from '@/tests/setup/database'
import { at, book, booking, counter, machinist, monday, openShop, otherCounter, refusalOf } from './counter-shop'

async function bookedJob() {
  const database = await testDatabase()
  await openShop(database)
  await book({
    ordered: [
      { work: 'flow-before', note: '' },
      { work: 'flat-cut', note: '' },
    ],
  })
  const see = () => seeJob(counter, { number: '26-0001', now: monday })
  return { client: database.client, see, job: await see() }
}

type Job = Awaited<ReturnType<typeof seeJob>>

const change = (job: Job, over: object) =>
  changeJobSchema.parse({
    reason: 'asked by the customer',
    jobId: job.id,
    version: job.version,
    promiseOn: job.promiseOn ?? '',
    urgent: job.urgent,
    note: job.note,
    partsPlace: job.partsPlace,
    visits: job.heads.map((head) => ({
      visitId: head.visitId,
      version: head.version,
      target: head.target,
      side: head.side,
      rackPlace: head.rackPlace,
    })),
    ...over,
  })

describe('changing a job', () => {
  it('changes what was changed, and the audit says what it was', async () => {
    const { client, see, job } = await bookedJob()
    expect(await changeJob(counter, change(job, { promiseOn: '2026-03-25', urgent: true }), at(monday))).toEqual({
      changed: 1,
    })
    expect(await see()).toMatchObject({ promiseOn: '2026-03-25', urgent: true, version: 2 })
    const entry = await client.auditEntry.findFirstOrThrow({ where: { action: 'job.change' } })
    expect(auditChanges.read(entry.changes, entry.seq)).toEqual({
      promiseOn: { from: '2026-03-20', to: '2026-03-25' },
      urgent: { from: false, to: true },
      reason: 'asked by the customer',
    })
  })

  it('is a conflict when somebody else was first, and shows both sides', async () => {
    const { see, job } = await bookedJob()
    await changeJob(otherCounter, change(job, { promiseOn: '2026-03-25' }), at(monday))
    const refused = await refusalOf(changeJob(counter, change(job, { promiseOn: '2026-03-18' }), at(monday)))
    expect(refused.code).toBe('conflict')
    expect(refused.message).toContain('Bram Tolliver')
    expect(refused.fields.promiseOn).toMatch(/2026-03-25.*2026-03-18/)
    expect((await see()).promiseOn).toBe('2026-03-25')
    // Both say the same: nothing to decide.
    expect(await changeJob(counter, change(job, { promiseOn: '2026-03-25' }), at(monday))).toEqual({
      changed: 0,
    })
  })

  it('gives one head its own target, and refuses it when that head changed meanwhile', async () => {
    const { see, job } = await bookedJob()
    const withTarget = (target: string) =>
      change(job, {
        visits: change(job, {}).visits.map((visit, place) => ({
          ...visit,
          target: place === 1 ? target : '58.0',
          side: job.heads[place]?.side,
        })),
      })
    expect(await changeJob(counter, withTarget('57.5 cc'), at(monday))).toEqual({ changed: 1 })
    expect((await see()).heads.map((head) => head.target)).toEqual(['58.0 cc', '57.5 cc'])
    const refused = await refusalOf(changeJob(counter, withTarget('56'), at(monday)))
    expect(refused.code).toBe('conflict')
    expect(refused.fields['visits.1.target']).toMatch(/57\.5 cc.*56 cc/)
  })

  it('is not a machinist’s to do', async () => {
    const { see, job } = await bookedJob()
    expect(await refusalOf(changeJob(machinist, change(job, { note: 'x' }), at(monday)))).toMatchObject({
      code: 'not-allowed',
    })
    expect((await see()).note).toBe('')
  })

  it('does not reach a head of another job', async () => {
    const { client, job } = await bookedJob()
    const other = await book()
    const visits = [{ visitId: other.heads[0]?.visitId ?? '', version: 1, target: '50', side: '', rackPlace: '' }]
    expect(await refusalOf(changeJob(counter, change(job, { visits }), at(monday)))).toMatchObject({
      code: 'not-found',
    })
    expect(await client.visit.count({ where: { targetCc: 50 } })).toBe(0)
  })
})

describe('changing the ordered work', () => {
  const order = (job: Job, over: object) =>
    changeOrderedWorkSchema.parse({
      jobId: job.id,
      visits: job.heads.map(({ visitId, version }) => ({ visitId, version })),
      add: [],
      end: [],
      reason: 'Customer called.',
      ...over,
    })

  it('adds and ends lines on every head, the route follows, and the reason is kept', async () => {
    const { client, see, job } = await bookedJob()
    expect(job.heads[0]?.route.some((step) => step.stepId === 'port')).toBe(false)
    const input = order(job, {
      add: [
        { work: 'port', note: '' },
        { work: 'flat-cut', note: '' },
      ],
      end: ['flow-before'],
    })
    expect(await changeOrderedWork(counter, input, at(monday))).toEqual({ added: 2, ended: 2 })
    const after = await see()
    for (const head of after.heads) {
      expect(head.ordered.map((line) => line.work).sort()).toEqual(['flat-cut', 'port'])
      expect(head.route.some((step) => step.stepId === 'port')).toBe(true)
    }
    expect(await client.orderedLine.count({ where: { work: 'flow-before' } })).toBe(2)
    const entries = await client.auditEntry.findMany({ where: { action: 'visit.order-work' } })
    expect(entries.map((entry) => auditChanges.read(entry.changes, entry.seq).reason)).toEqual([
      'Customer called.',
      'Customer called.',
    ])
  })

  it('is a conflict on a head that changed meanwhile, and then changes none', async () => {
    const { see, job } = await bookedJob()
    const stale = order(job, { add: [{ work: 'port', note: '' }] })
    const only = [{ visitId: job.heads[1]?.visitId, version: job.heads[1]?.version }]
    await changeOrderedWork(otherCounter, order(job, { visits: only, add: [{ work: 'guides', note: '' }] }), at(monday))
    expect(await refusalOf(changeOrderedWork(counter, stale, at(monday)))).toMatchObject({ code: 'conflict' })
    expect((await see()).heads.flatMap((head) => head.ordered.map((line) => line.work))).not.toContain('port')
  })

  it('needs a reason and a change', async () => {
    const { job } = await bookedJob()
    expect(() => order(job, { add: [{ work: 'port', note: '' }], reason: ' ' })).toThrow()
    expect(() => order(job, {})).toThrow()
  })
})

describe('changing the engine', () => {
  const engine = { ...booking().engine, label: 'V eight', layout: 'v' as const, camInHead: 'no' as const }

  it('puts the new figures in place of the old', async () => {
    const { client, see, job } = await bookedJob()
    const send = (version: number, figures: object) =>
      changeEngine(
        counter,
        changeEngineSchema.parse({
          jobId: job.id,
          version,
          engine: { ...engine, figures: { ...engine.figures, ...figures } },
        }),
        at(monday),
      )
    await send(1, { boreIn: '4.000', strokeIn: '3.48' })
    await send(2, { boreIn: '4.030' })
    expect((await see()).engine).toMatchObject({
      label: 'V eight',
      layout: 'v',
      camInHead: 'no',
      figures: [{ key: 'boreIn', text: '4.030' }],
    })
    expect(await client.engineFigure.count()).toBe(1)
    expect(await refusalOf(send(2, { boreIn: '4.040' }))).toMatchObject({ code: 'conflict' })
  })
})
