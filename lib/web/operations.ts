import type { z } from 'zod'
import type { Actor } from '@/lib/core/access/roles'
import type { Refusal, Result } from '@/lib/core/errors'
import { keyText } from '@/lib/core/route/keys'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { Moment } from '@/lib/data/write'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'
import type { OperationKind, SentOperation } from '@/lib/schemas/operation'
import {
  correctReadingSchema,
  openHoldSchema,
  partsWaitSchema,
  recordReadingsSchema,
  reportFindingSchema,
  setRackPlaceSchema,
  startStepSchema,
  tickStepSchema,
  undoTickSchema,
  type Entry,
} from '@/lib/schemas/visit'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { correctReading } from '@/lib/use-cases/visits/correct-reading'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { setRackPlace } from '@/lib/use-cases/visits/set-rack-place'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { undoTick } from '@/lib/use-cases/visits/undo-tick'
import { openWait } from '@/lib/use-cases/waits/open-wait'
import { runAction } from './define-action'

/** What a batch has learnt so far. */
type Batch = {
  readonly actor: Actor
  /** Server's clock less the device's. */
  readonly clockOffMs: number
  /** Of each step, the number of the last event that this device made itself. */
  readonly seen: Map<string, number>
  /** Heads of which an earlier deed could not be carried out yet: later ones wait for it. */
  readonly waiting: Set<string>
}

type CarryOut = (operation: SentOperation, batch: Batch) => Promise<Result<unknown>>

/** As much of an input as matters to all kinds: the head, and of a deed at a step what was seen there. */
type Input = {
  readonly visitId: string
  readonly step?: StepKey | undefined
  readonly seen?: number | undefined
  readonly entry?: Entry | null | undefined
}

function kindOf<S extends z.ZodType<Input>, T>(
  name: string,
  schema: S,
  useCase: (actor: Actor, input: z.output<S>, moment: Moment) => Promise<T>,
): CarryOut {
  return ({ id, input, takenAt }, batch) =>
    runAction(
      name,
      schema,
      { op: id, input },
      async (parsed, moment) => {
        const value = await useCase(batch.actor, asOfNow(parsed, takenAt, batch), moment)
        if (hasSeen(value)) batch.seen.set(placeOf(parsed), value.seen)
        return value
      },
      withoutSight,
    )
}

const placeOf = ({ visitId, step }: Input): string => (step ? `${visitId} ${keyText(step)}` : '')

/** The same deed, whenever it is sent: what was seen grows with the deeds before it. */
function withoutSight<I extends Input>({ seen: _seen, ...content }: I) {
  return content
}

/** With the sight that the device's own earlier deeds gave, and the readings at the time they were taken. */
function asOfNow<I extends Input>(input: I, takenAt: string, { seen, clockOffMs }: Batch): I {
  const at = new Date(Date.parse(takenAt) + clockOffMs).toISOString()
  return {
    ...input,
    ...(input.seen === undefined ? {} : { seen: Math.max(input.seen, seen.get(placeOf(input)) ?? 0) }),
    ...(input.entry ? { entry: { ...input.entry, takenAt: at } } : {}),
  }
}

/** Each kind's inputs by version. A queue that an earlier build wrote is still taken: an old version stays in its list. */
const kinds: Readonly<Record<OperationKind, readonly CarryOut[]>> = {
  tick: [kindOf('tickStep', tickStepSchema, tickStep)],
  'undo-tick': [kindOf('undoTick', undoTickSchema, undoTick)],
  'record-readings': [kindOf('recordReadings', recordReadingsSchema, recordReadings)],
  start: [kindOf('startStep', startStepSchema, startStep)],
  'correct-reading': [kindOf('correctReading', correctReadingSchema, correctReading)],
  finding: [kindOf('reportFinding', reportFindingSchema, reportFinding)],
  hold: [kindOf('openHold', openHoldSchema, openHold)],
  'rack-place': [kindOf('setRackPlace', setRackPlaceSchema, setRackPlace)],
  'parts-wait': [kindOf('openWait', partsWaitSchema, openWait)],
}

/** A batch may be so long under way before it is looked at; no device waits longer for an answer. What is more is its clock. */
const longestWayMs = 20_000

/** Nothing is wrong with the deed: the same is sent again later. */
const passes: readonly Refusal['code'][] = ['failed', 'unavailable', 'too-many', 'not-signed-in']

/**
 * Carries out what a device kept, in the order it was done, each deed in its own transaction under its own id: sent twice,
 * or ten times at once, it is done once and answered alike. A deed that cannot be done now holds back the later ones of
 * its head; one that is refused does not: each is looked at by itself.
 */
export async function carryOut(
  actor: Actor,
  { sentAt, operations }: { readonly sentAt: string; readonly operations: readonly SentOperation[] },
  now: Date,
): Promise<OperationAnswer[]> {
  const lateMs = now.getTime() - Date.parse(sentAt)
  const clockOffMs = Math.abs(lateMs) <= longestWayMs ? 0 : lateMs
  const batch: Batch = { actor, clockOffMs, seen: new Map(), waiting: new Set() }
  const answers: OperationAnswer[] = []
  for (const operation of operations) answers.push(await carryOutOne(operation, batch))
  return answers
}

async function carryOutOne(operation: SentOperation, batch: Batch): Promise<OperationAnswer> {
  const { id, kind, version, personId, input } = operation
  if (batch.waiting.has(input.visitId)) return { id, state: 'again', refusal: behindAnother }
  if (personId !== batch.actor.personId) return { id, state: 'again', refusal: notTheirs }
  const run = kinds[kind][version - 1]
  if (!run) return { id, state: 'refused', refusal: unknownVersion }
  const result = await run(operation, batch)
  if (result.ok) return { id, state: 'done', value: result.value }
  if (!passes.includes(result.refusal.code)) return { id, state: 'refused', refusal: result.refusal }
  batch.waiting.add(input.visitId)
  return { id, state: 'again', refusal: result.refusal }
}

const hasSeen = (value: unknown): value is { readonly seen: number } =>
  typeof value === 'object' && value !== null && 'seen' in value && typeof value.seen === 'number'

const behindAnother: Refusal = {
  code: 'failed',
  message: 'Not sent yet: something done before on this head was not sent yet.',
}
const notTheirs: Refusal = {
  code: 'not-signed-in',
  message: 'Not sent yet: somebody else did this. It is sent when they sign in on this tablet.',
}
const unknownVersion: Refusal = {
  code: 'invalid',
  message: 'Not sent: this was kept by a newer Brasstag than the one that runs now. Note it down and tell the owner.',
}
