import { keyText } from '@/lib/core/route/keys'
import type { StepKey } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { lastSeq } from '@/lib/dossier/find-step'
import { gapsOf } from '@/lib/dossier/gaps'
import { correctReadingSchema, decideHoldSchema, entrySchema, openHoldSchema } from '@/lib/schemas/visit'
import { decideHold } from '@/lib/use-cases/holds/decide-hold'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { tickStep, type Ticked } from '@/lib/use-cases/visits/tick-step'
import { undoTick } from '@/lib/use-cases/visits/undo-tick'
import { waiveGap } from '@/lib/use-cases/visits/waive-gap'
import { owner } from '../../use-cases/jobs/counter-shop'
import { answer, conditions } from '../../use-cases/release/whole-job'
import type { Deed, HeadModel } from './model'

const read = async ({ visitId }: HeadModel): Promise<Dossier> => loadDossier(await db(), visitId)
const keyOf = ({ stepId, occurrence, orderId }: StepKey): StepKey => ({ stepId, occurrence, orderId })
const placeOf = (step: StepKey, kind: string, point: string): string => `${keyText(step)} ${kind} ${point}`

/** The first step that can be done, with its readings. Nothing is ticked on a head that is on hold. */
export async function tick(head: HeadModel): Promise<Deed | null> {
  const found = await read(head)
  const open = found.route.filter(({ state }) => !['done', 'waived', 'not needed'].includes(state))
  const step = open.find(({ waitsFor }) => waitsFor.length === 0) ?? open[0]
  if (!step || step.stepId === 'hand-over') return null
  const readings = step.owes
    .filter(({ missing }) => missing.length > 0)
    .flatMap(({ kind, points }) =>
      points.map((point) => {
        const text = answer(step, kind, point, () => undefined)
        return { kind, point, text, notTaken: null, again: text, ...(kind === 'cc' ? { repeat: 'again' } : {}) }
      }),
    )
  const isFlow = step.stepId === 'flow'
  const typed = { readings, instrumentId: null, conditions: isFlow ? conditions : {}, takenAt: null }
  const entry = entrySchema.parse(typed)
  const input = { visitId: head.visitId, step: keyOf(step), seen: lastSeq(found.visit, step), entry }
  return {
    what: `tick ${step.stepId}`,
    forecast: head.openHolds.length > 0 ? 'must not' : 'may',
    run: (moment) => tickStep(owner, input, moment),
    follow: ({ ticked }: Ticked) => {
      if (!ticked)
        throw new Error(`What was read at ${step.stepId} put the head on hold: the figures are to be good ones.`)
      for (const { kind, point, text } of readings) head.values.set(placeOf(step, kind, point), text)
      head.events.push('tick')
    },
    head,
  }
}

/** What takes metal: a second tick of it would undo all that followed. */
const cuts: readonly string[] = ['angle-cut', 'flat-cut', 'open-chamber']

/** A step that is ticked already, by somebody who saw it so. Looking once more does no harm. */
export async function tickAgain(head: HeadModel): Promise<Deed | null> {
  const found = await read(head)
  const step = found.route.findLast(({ state }) => state === 'done')
  if (!step) return null
  const input = { visitId: head.visitId, step: keyOf(step), seen: lastSeq(found.visit, step), entry: null }
  const run: Deed['run'] = (moment) => tickStep(owner, input, moment)
  const forecast = cuts.includes(step.stepId) ? 'must not' : 'may'
  return { what: `tick ${step.stepId} again`, forecast, run, follow: () => head.events.push('tick'), head }
}

export async function takeBack(head: HeadModel): Promise<Deed | null> {
  const found = await read(head)
  const step = found.route.findLast(({ doneSeq, state }) => doneSeq !== null && state !== 'waived')
  if (!step) return null
  const input = { visitId: head.visitId, step: keyOf(step), seen: lastSeq(found.visit, step), reason: 'the wrong head' }
  const run: Deed['run'] = (moment) => undoTick(owner, input, moment)
  return { what: `take ${step.stepId} back`, forecast: 'may', run, follow: () => head.events.push('undo'), head }
}

/** Another value in the place of one that was read, or that one withdrawn. */
export async function correct(head: HeadModel, which: number): Promise<Deed | null> {
  const { newest } = await read(head)
  const chambers = newest.filter(({ kind, notTaken }) => kind === 'cc' && notTaken === null)
  const reading = chambers[which % Math.max(1, chambers.length)]
  if (!reading) return null
  const place = placeOf(reading.step, reading.kind, reading.point)
  const withdraw = which % 3 === 0
  const text = withdraw ? '' : (Number(reading.text) + 0.1).toFixed(1)
  const correction = withdraw ? 'withdraw' : 'replace'
  const typed = { visitId: head.visitId, readingId: reading.id, correction, text, again: text, reason: 'misread' }
  return {
    what: `${correction} ${place}`,
    forecast: 'may',
    run: (moment) => correctReading(owner, correctReadingSchema.parse(typed), moment),
    follow: () => {
      if (withdraw) head.values.delete(place)
      else head.values.set(place, text)
    },
    head,
  }
}

export function hold(head: HeadModel): Deed {
  const input = openHoldSchema.parse({ visitId: head.visitId, stepId: null, reason: 'a crack at the seat' })
  return {
    what: 'hold',
    forecast: head.releases > 0 ? 'may' : 'must',
    run: (moment) => openHold(owner, input, moment),
    follow: ({ holdId }: { holdId: string }) => head.openHolds.push({ id: holdId, version: 1 }),
    head,
  }
}

/** The oldest open hold; with none open, one that was decided already. */
export function decide(head: HeadModel): Deed | null {
  const [open] = head.openHolds
  const chosen = open ?? head.decidedHolds[0]
  if (!chosen) return null
  const typed = { holdId: chosen.id, version: chosen.version, decision: 'rework', note: 'weld it', customerYes: '' }
  return {
    what: 'decide hold',
    forecast: open ? 'must' : 'must not',
    run: (moment) => decideHold(owner, decideHoldSchema.parse(typed), moment),
    follow: () => {
      head.openHolds.shift()
      head.decidedHolds.push(chosen)
    },
    head,
  }
}

/** The owner lets the first thing pass that is missing. */
export async function waive(head: HeadModel): Promise<Deed | null> {
  const gap = gapsOf(await read(head)).find(({ what }) => what !== 'hold' && what !== 'finding')
  if (!gap) return null
  const input = { visitId: head.visitId, gap: gap.gap, reason: 'the customer wants it so' }
  return {
    what: `waive ${gap.gap}`,
    forecast: head.releases > 0 ? 'must not' : 'may',
    run: (moment) => waiveGap(owner, input, moment),
    follow: () => {
      if (gap.what === 'step') head.events.push('waive')
    },
    head,
  }
}

/** Of each step, kind and point what was read last. */
export const valuesOf = ({ newest }: Dossier): Map<string, string> =>
  new Map(newest.map(({ step, kind, point, text }) => [placeOf(step, kind, point), text]))
