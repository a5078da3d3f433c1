import { expect, it, vi } from 'vitest'
import { effectiveReadings } from '@/lib/core/readings/effective'
import { visitById } from '@/lib/data/visits'
import { loadDossier } from '@/lib/dossier/dossier'
import { recordReadingsSchema, undoTickSchema } from '@/lib/schemas/visit'
import { runOf } from '@/lib/dossier/flow-run'
import { lastSeq } from '@/lib/dossier/find-step'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { undoTick } from '@/lib/use-cases/visits/undo-tick'
import { at, monday, owner } from '../jobs/counter-shop'
import { conditions, shopReadyToRelease, workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 60_000 })

it('flow run again after a second cut is a run of its own, with none of the lifts from before the cut', async () => {
  const { database, first } = await shopReadyToRelease()
  const { client } = database
  const { visitId } = first
  const cut = { stepId: 'flat-cut', occurrence: '', orderId: null } as const
  const flowAfter = { stepId: 'flow', occurrence: 'after', orderId: null } as const
  const seenOf = async (step: typeof cut | typeof flowAfter) => lastSeq(await visitById(client, visitId), step)
  const intake = async () => {
    const readings = effectiveReadings((await visitById(client, visitId)).readings)
    return runOf(
      readings.filter(({ step }) => step.occurrence === 'after'),
      'intake',
      'h',
    )?.run.points
  }
  expect(await intake()).toHaveLength(6)

  await undoTick(
    owner,
    undoTickSchema.parse({ visitId, step: cut, seen: await seenOf(cut), reason: 'a thou more' }),
    at(monday),
  )
  await workThrough(visitId, ['flow', 'hand-over'])
  const { route } = await loadDossier(client, visitId)
  expect(route.find((step) => step.stepId === 'flow' && step.occurrence === 'after')?.state).toBe('do again')

  const record = async (point: string, text: string) =>
    recordReadings(
      owner,
      recordReadingsSchema.parse({
        visitId,
        step: flowAfter,
        seen: await seenOf(flowAfter),
        entry: {
          readings: [{ kind: 'flow', point, text, notTaken: null }],
          instrumentId: null,
          conditions: { ...conditions, run: '1' },
          takenAt: null,
        },
      }),
      at(monday),
    )
  await record('intake@0.200', '121')
  expect(await intake()).toEqual([{ liftIn: 0.2, flowCfm: 121, notTaken: null }])
  await record('intake@0.400', '191')
  expect((await intake())?.map(({ flowCfm }) => flowCfm)).toEqual([121, 191])
})
