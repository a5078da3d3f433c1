import { expect, it } from 'vitest'
import { db } from '@/lib/data/db'
import { finishRows } from '@/lib/data/finish-history'
import { lastSeq } from '@/lib/dossier/find-step'
import { loadDossier } from '@/lib/dossier/dossier'
import { shopRecord } from '@/lib/dossier/finish/shop-record'
import { noRules } from '@/lib/core/route/rules'
import { defaultShopSettings } from '@/lib/core/shop/settings'
import { tickStepSchema, undoTickSchema } from '@/lib/schemas/visit'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { undoTick } from '@/lib/use-cases/visits/undo-tick'
import { describeOnBoth } from '@/tests/setup/database'
import { at, book, head, monday, openShop, owner } from '../jobs/counter-shop'

const key = (stepId: 'check-in' | 'wash-in') => ({ stepId, occurrence: '', orderId: null })
const later = (hours: number): Date => new Date(monday.getTime() + hours * 60 * 60 * 1000)

async function tick(visitId: string, stepId: 'check-in' | 'wash-in', when: Date): Promise<void> {
  const found = await loadDossier(await db(), visitId)
  const readings = [
    { kind: 'condition', point: '', text: 'sound', notTaken: null },
    { kind: 'came-with', point: '', text: 'bare', notTaken: null },
    { kind: 'photo', point: '', text: 'no photo: the camera is away', notTaken: null },
  ]
  await tickStep(
    owner,
    tickStepSchema.parse({
      ...{ visitId, step: key(stepId), seen: lastSeq(found.visit, key(stepId)) },
      entry: { readings: stepId === 'check-in' ? readings : [], instrumentId: null, conditions: {}, takenAt: null },
    }),
    at(when),
  )
}

describeOnBoth('how long a step took', (open) => {
  it('is kept with its tick, taken away with it, and read with the shop’s record', async () => {
    const database = await open()
    const { client } = database
    await openShop(database)
    const job = await book({ heads: [head(), head()] })
    const [one = '', two = ''] = job.heads.map(({ visitId }) => visitId)
    const rows = () => client.stepTime.findMany({ orderBy: { doneAt: 'asc' } })
    // Booked at 8:00; checked in at 9:00 and 10:00; the first is washed at 12:00, the second at 15:00.
    await tick(one, 'check-in', later(1))
    await tick(two, 'check-in', later(2))
    await tick(one, 'wash-in', later(4))
    await tick(two, 'wash-in', later(7))
    expect(
      (await rows()).map(({ stepId, station, readyAt, freeAt, doneAt }) => [stepId, station, readyAt, freeAt, doneAt]),
    ).toEqual([
      ['check-in', 'front-desk', monday, null, later(1)],
      ['check-in', 'front-desk', monday, later(1), later(2)],
      ['wash-in', 'wash', later(1), null, later(4)],
      ['wash-in', 'wash', later(2), later(4), later(7)],
    ])
    const read = { visitIds: [two], rules: noRules, now: later(8) }
    const { open: now, queued, took } = await finishRows(client, read)
    const record = shopRecord(took, defaultShopSettings, 'America/Chicago')
    // 3 and 5 hours: fewer than eight, so the setting of 0.4 days speaks.
    expect(took.filter(({ key: step }) => step === 'wash-in').map(({ toAt }) => toAt)).toEqual([later(7), later(4)])
    expect(record.ofStep('wash-in').own).toBe(false)
    expect(record.workingDays(later(2), later(7)) * 24).toBeCloseTo(5, 9)
    // The washed pair stands at the next stations, both of one promise.
    expect(queued.every(({ heads, urgent }) => heads === 2 && !urgent)).toBe(true)
    expect(now.filter(({ kind }) => kind === 'since').map(({ since }) => since)).toEqual([later(7)])

    const found = await loadDossier(client, two)
    const seen = lastSeq(found.visit, key('wash-in'))
    const undone = undoTickSchema.parse({ visitId: two, step: key('wash-in'), seen, reason: 'wrong head' })
    await undoTick(owner, undone, at(later(8)))
    expect((await rows()).map(({ stepId }) => stepId)).toEqual(['check-in', 'check-in', 'wash-in'])
  })
})
