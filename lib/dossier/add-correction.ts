import { RefusedError } from '@/lib/core/errors'
import type { ReadingSpec } from '@/lib/core/readings/types'
import { readingSpecs } from '@/lib/core/readings/specs'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { VisitRecord } from '@/lib/data/visit-records'
import { newId } from '@/lib/data/ids'
import { addEvent } from '@/lib/data/visits'
import type { Write } from '@/lib/data/write'
import { inTrail } from './in-trail'
import { takenAtOf } from './taken-at'

export type Correction = {
  readonly correction: 'replace' | 'withdraw'
  readonly text: string
  readonly reason: string
  /** When it was read, ISO 8601; null or left out: now. */
  readonly takenAt?: string | null
}

/**
 * The row of a correction, in the visit's log and in the audit. The caller holds the visit's lock and refreshes it.
 * `heldAgainst`: of an unlikely figure that was typed a second time, as it is kept; '' of any other.
 */
export async function addCorrection(
  ctx: Write,
  visit: Pick<VisitRecord, 'id' | 'jobId'>,
  standing: EffectiveReading,
  input: Correction,
  heldAgainst = '',
): Promise<void> {
  const eventSeq = await addEvent(ctx, visit.id, 'read', standing.step, { note: input.reason })
  const setId = newId(ctx.now)
  const { stepId, occurrence, orderId } = standing.step
  await ctx.tx.readingSet.create({
    data: {
      id: setId,
      visitId: visit.id,
      castingId: null,
      stepId,
      occurrence,
      orderId,
      eventSeq,
      instrumentId: standing.instrumentId,
      instrumentCheckedOn: standing.instrumentCheckedOn,
      conditions: standing.conditions,
      takenAt: takenAtOf(input.takenAt ?? null, ctx.now),
      recordedAt: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  await ctx.tx.reading.create({
    data: {
      id: newId(ctx.now),
      setId,
      confirmed: heldAgainst !== '',
      heldAgainst: heldAgainst === '' ? null : heldAgainst,
      ...correctionRow(standing, input),
    },
  })
  ctx.audit({
    action: 'reading.correct',
    subjectId: standing.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: {
      was: inTrail(standing.kind, standing.text),
      now: input.correction === 'withdraw' ? null : inTrail(standing.kind, input.text),
      reason: input.reason,
      ...(heldAgainst === '' ? {} : { confirmed: true }),
    },
  })
}

/** A choice is kept by its code, however it was typed; other words only where such are answers. */
function chosen({ choices = [], mayBeWords }: ReadingSpec, typed: string): string {
  const found = choices.find(({ value, label }) => value === typed || label.toLowerCase() === typed.toLowerCase())
  if (found) return found.value
  if (mayBeWords) return typed
  const message = `Choose one: ${choices.map(({ label }) => label).join('; ')}.`
  throw new RefusedError({ code: 'invalid', message, fields: { text: message } })
}

/** A row that stands in the place of another: its value as typed and read, or nothing when it is withdrawn. */
export function correctionRow(standing: EffectiveReading, input: Correction) {
  const base = {
    kind: standing.kind,
    point: standing.point,
    notTaken: null,
    correctsId: standing.id,
    correction: input.correction,
    reason: input.reason,
    repeat: null,
    filled: standing.filled,
  }
  if (input.correction === 'withdraw') return { ...base, value: null, text: '', unit: '' }
  const spec = readingSpecs[standing.kind]
  if (input.text === '') {
    throw new RefusedError({
      code: 'invalid',
      message: 'Enter the correct value.',
      fields: { text: 'Enter the correct value.' },
    })
  }
  if (spec.choices) return { ...base, value: null, text: chosen(spec, input.text), unit: '' }
  if (spec.form !== 'figure' || !spec.quantity) return { ...base, value: null, text: input.text, unit: '' }
  const parsed = parseFigure(input.text, spec.quantity)
  if (!parsed.ok && spec.mayBeWords && parsed.refusal.code === 'unreadable') {
    return { ...base, value: null, text: input.text, unit: '' }
  }
  if (!parsed.ok) throw new RefusedError({ ...parsed.refusal, fields: { text: parsed.refusal.message } })
  const { value, text, unit } = parsed.value
  return { ...base, value, text, unit }
}
