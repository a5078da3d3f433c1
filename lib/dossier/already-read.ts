import { sameKey } from '@/lib/core/route/keys'
import type { StepId, StepKey } from '@/lib/core/route/step-ids'
import { readingConditions } from '@/lib/data/stored/records'
import type { VisitRecord } from '@/lib/data/visit-records'
import { instrumentIdOf, type Entry, type ReadingEntry } from './add-readings'

/** Readings as they come: who sends them, for which step, and the number of the last event that their page showed. */
export type SentReadings = {
  readonly personId: string
  readonly step: StepKey
  readonly seen: number
  /** That of the page when they were sent first and refused, where they are kept over what came between. */
  readonly since?: number | undefined
  readonly entry: Entry
}

type Visit = Pick<VisitRecord, 'readings'>
type Set = Visit['readings'][number]

type Said = Pick<ReadingEntry, 'point' | 'text' | 'notTaken' | 'filled'> & { readonly kind: string }

const textOf = ({ kind, point, text, notTaken, filled }: Said, instrumentId: string | null): string =>
  JSON.stringify([kind, point, text, notTaken, instrumentId, filled === true])

const textsOfSet = ({ points, instrumentId }: Set): string[] => points.map((point) => textOf(point, instrumentId))

const runOf = (conditions: Readonly<Record<string, string>>): string => conditions.run ?? ''

/**
 * What the same person entered at this step after what their page shows. The answer to that was lost: the page does not
 * know that it is kept. Another run of the flow bench, or another instrument, is another entry.
 */
const ownSets = ({ readings }: Visit, { personId, step, seen, since = seen, entry }: SentReadings): Set[] =>
  readings.filter(
    (set) =>
      set.eventSeq > since &&
      set.byId === personId &&
      sameKey({ ...set, stepId: set.stepId as StepId }, step) &&
      runOf(readingConditions.read(set.conditions, set.id)) === runOf(entry.conditions) &&
      set.points.every(({ correctsId }) => correctsId === null),
  )

/** The numbers of the events whose readings are all sent once more: what is sent does not contradict them. */
export function repeatedEvents(visit: Visit, sent: SentReadings): number[] {
  const texts = sent.entry.readings.map((reading) => textOf(reading, instrumentIdOf(reading, sent.entry)))
  const own = ownSets(visit, sent)
  const others = own.filter((set) => !textsOfSet(set).every((text) => texts.includes(text)))
  return own.map(({ eventSeq }) => eventSeq).filter((seq) => !others.some(({ eventSeq }) => eventSeq === seq))
}

/** What is sent, without the readings that are kept already: a reading whose answer was lost is entered once. */
export function notYetRead(visit: Visit, sent: SentReadings): Entry {
  const { entry } = sent
  const kept = ownSets(visit, sent).flatMap(textsOfSet)
  const isNew = (reading: ReadingEntry) => !kept.includes(textOf(reading, instrumentIdOf(reading, entry)))
  return { ...entry, readings: entry.readings.filter(isNew) }
}
