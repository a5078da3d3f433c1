import { figureKey } from '@/lib/core/expected/types'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { isValveKind } from '@/lib/core/readings/valve-kinds'
import { ok, RefusedError, type Refusal, type Result } from '@/lib/core/errors'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { RouteStep } from '@/lib/core/route/types'
import { newId } from '@/lib/data/ids'
import { readingConditions } from '@/lib/data/stored/records'
import { addEvent } from '@/lib/data/visits'
import type { Write } from '@/lib/data/write'
import { runNumber } from './flow-run'
import { inTrail } from './in-trail'
import { takenAtOf } from './taken-at'

/** One answer as it comes from the keypad or the form. */
export type ReadingEntry = {
  readonly kind: ReadingKind
  readonly point: string
  readonly text: string
  /** Why it could not be taken; null when it was. */
  readonly notTaken: string | null
  /** Of a chamber that has a value: 'again', or the id of the reading it stands in the place of. */
  readonly repeat?: string | null | undefined
  /** An unlikely figure as it was typed the second time; left out when it was typed once. */
  readonly again?: string | undefined
  /** What it was read with; left out: what the whole go was read with. */
  readonly instrumentId?: string | null | undefined
  /** It comes with "All alike": nobody measured it at this point. */
  readonly filled?: boolean | undefined
}

/** What was read at one go, with what it was read with where a reading does not say otherwise. */
export type Entry = {
  readonly readings: readonly ReadingEntry[]
  readonly instrumentId: string | null
  readonly conditions: Readonly<Record<string, string>>
  readonly takenAt: string | null
}

type Point = {
  readonly kind: ReadingKind
  readonly point: string
  readonly notTaken: string | null
  readonly value: number | null
  readonly text: string
  readonly unit: string
  readonly repeat: string | null
  readonly filled: boolean
}

/** By kind and point: what an unlikely reading was held against when it was confirmed, as it is kept. */
export type Confirmed = ReadonlyMap<string, string>

/** Of words and choices nothing is unlikely. */
export const nothingConfirmed: Confirmed = new Map()

/** Answers as they are kept. All figures that cannot be read are refused at one go, each under its field. */
export function pointsOf(entries: readonly ReadingEntry[]) {
  const refusals = new Map<string, Refusal>()
  const points = entries.filter(isAnswered).flatMap((entry) => {
    const point = pointOf(entry)
    if (point.ok) return [point.value]
    refusals.set(`${entry.kind}|${entry.point}`, point.refusal)
    return []
  })
  const [first] = refusals.values()
  if (!first) return points
  const fields = Object.fromEntries([...refusals].map(([key, { message }]) => [key, message]))
  throw new RefusedError({ ...first, fields })
}

/** Words stay words. */
function pointOf(entry: ReadingEntry): Result<Point> {
  const spec = readingSpecs[entry.kind]
  const { kind, point, notTaken } = entry
  const filled = entry.filled === true && isValveKind(kind)
  const base = { kind, point, notTaken, repeat: entry.repeat ?? null, filled }
  if (entry.notTaken !== null || spec.form !== 'figure' || !spec.quantity) {
    return ok({ ...base, value: null, text: entry.text, unit: '' })
  }
  const parsed = parseFigure(entry.text, spec.quantity)
  if (parsed.ok) return ok({ ...base, value: parsed.value.value, text: parsed.value.text, unit: parsed.value.unit })
  if (spec.mayBeWords && parsed.refusal.code === 'unreadable')
    return ok({ ...base, value: null, text: entry.text, unit: '' })
  return parsed
}

const isAnswered = (entry: ReadingEntry): boolean => entry.text !== '' || (entry.notTaken ?? '') !== ''

/** Writes what was read at one go; empty answers are left out. Returns how many were written. */
export async function addReadings(
  ctx: Write,
  { id: visitId, jobId }: { readonly id: string; readonly jobId: string },
  step: RouteStep,
  entry: Entry,
  confirmed: Confirmed,
): Promise<number> {
  const points = pointsOf(entry.readings)
  if (points.length === 0) return 0
  const eventSeq = await addEvent(ctx, visitId, 'read', step)
  const conditions = { ...entry.conditions, ...(await runAgain(ctx, visitId, step)) }
  for (const [instrumentId, own] of byInstrument(entry)) {
    await addSet(ctx, { visitId, jobId }, step, { ...own, instrumentId, conditions }, { eventSeq, confirmed })
  }
  return points.length
}

/** A set has one instrument: what was read at one go with several is several sets of one event. */
export function byInstrument(entry: Entry): ReadonlyMap<string | null, Entry> {
  const sets = new Map<string | null, Entry>()
  for (const reading of entry.readings.filter(isAnswered)) {
    const instrumentId = instrumentIdOf(reading, entry)
    const readings = [...(sets.get(instrumentId)?.readings ?? []), reading]
    sets.set(instrumentId, { ...entry, readings })
  }
  return sets
}

/** What one reading of a go was read with. */
export const instrumentIdOf = (
  reading: Pick<ReadingEntry, 'instrumentId'>,
  entry: Pick<Entry, 'instrumentId'>,
): string | null => (reading.instrumentId === undefined ? entry.instrumentId : reading.instrumentId)

async function addSet(
  ctx: Write,
  { visitId, jobId }: { readonly visitId: string; readonly jobId: string },
  step: RouteStep,
  entry: Entry,
  { eventSeq, confirmed }: { readonly eventSeq: number; readonly confirmed: Confirmed },
): Promise<void> {
  const points = pointsOf(entry.readings)
  const setId = newId(ctx.now)
  await ctx.tx.readingSet.create({
    data: {
      id: setId,
      visitId,
      castingId: null,
      stepId: step.stepId,
      occurrence: step.occurrence,
      orderId: step.orderId,
      eventSeq,
      ...(await instrumentOf(ctx, entry.instrumentId)),
      conditions: readingConditions.write(entry.conditions),
      takenAt: takenAtOf(entry.takenAt, ctx.now),
      recordedAt: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  await addPoints(ctx, setId, points, confirmed)
  const here = [...confirmed.keys()].filter((key) => points.some(({ kind, point }) => figureKey(kind, point) === key))
  ctx.audit({
    action: 'reading-set.read',
    subjectId: setId,
    visitId,
    jobId,
    changes: {
      step: step.stepId,
      points: points.map((point) => [point.kind, point.point, inTrail(point.kind, point.text), point.notTaken]),
      ...filledInTrail(points),
      ...(here.length > 0 ? { confirmed: here } : {}),
    },
  })
}

/** The columns that were filled in one go: whoever reads the trail sees that nobody measured them. */
function filledInTrail(points: readonly Point[]): { readonly filled?: readonly string[] } {
  const kinds = [...new Set(points.filter(({ filled }) => filled).map(({ kind }) => kind))]
  return kinds.length === 0 ? {} : { filled: kinds }
}

/** A flow step that later work undid is run anew: its lifts belong to a run of their own, whatever was read before. */
async function runAgain(ctx: Write, visitId: string, step: RouteStep): Promise<{ readonly run?: string }> {
  if (step.stepId !== 'flow' || step.state !== 'do again') return {}
  const { occurrence, orderId } = step
  const sets = await ctx.tx.readingSet.findMany({
    where: { visitId, stepId: 'flow', occurrence, orderId },
    select: { id: true, conditions: true },
  })
  const highest = Math.max(0, ...sets.map(runNumber))
  const begun = step.owes.some(({ points, missing }) => missing.length < points.length)
  return { run: String(begun ? Math.max(1, highest) : highest + 1) }
}

/**
 * The instrument as it stands now: a check that comes later does not make an earlier reading better. One that is not the
 * shop's, or is retired, is refused.
 */
async function instrumentOf(ctx: Write, instrumentId: string | null) {
  if (instrumentId === null) return { instrumentId, instrumentCheckedOn: null }
  const instrument = await ctx.tx.instrument.findUnique({ where: { id: instrumentId } })
  if (!instrument || instrument.retiredAt) {
    const message = 'This instrument is no longer in use. Pick another.'
    throw new RefusedError({ code: 'invalid', message })
  }
  return { instrumentId, instrumentCheckedOn: instrument.lastCheckedOn ?? '' }
}

/** The points of one set, as they were first read: nothing is corrected yet. */
export async function addPoints(
  ctx: Write,
  setId: string,
  points: readonly Point[],
  confirmed: Confirmed = nothingConfirmed,
): Promise<void> {
  await ctx.tx.reading.createMany({
    data: points.map((point) => ({
      id: newId(ctx.now),
      setId,
      reason: '',
      correctsId: null,
      correction: null,
      confirmed: confirmed.has(figureKey(point.kind, point.point)),
      heldAgainst: confirmed.get(figureKey(point.kind, point.point)) ?? null,
      ...point,
    })),
  })
}
