import { pointLabel } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { keyText } from '@/lib/core/route/keys'
import type { RouteStep } from '@/lib/core/route/types'
import { capital } from '@/lib/core/route/words'
import type { VisitRecord } from '@/lib/data/visit-records'
import { stepKeyOf } from '@/lib/data/facts'
import { readingChains, type HistoryEntry } from '@/lib/data/reading-history'
import { confirmedText } from '@/lib/dossier/confirmed'
import { answerWords } from '@/lib/dossier/reading-text'

/** One answer as it was before something else was put in its place. */
export type EarlierAnswer = { readonly text: string; readonly by: string; readonly at: Date }

export type ReadingLine = {
  /** Of the answer that stands: what a correction points at. */
  readonly id: string
  readonly step: string
  readonly kind: ReadingKind
  readonly label: string
  readonly point: string
  readonly text: string
  readonly notTaken: string | null
  readonly by: string
  readonly at: Date
  /** "Burette 50, last checked 2026-02-20", as it stood on the day; '' when none was named. */
  readonly instrument: string
  /** Why it was corrected or withdrawn; '' when it is the first answer. */
  readonly correction: string
  readonly withdrawn: boolean
  /** It came with "All alike": nobody measured it at this valve. */
  readonly filled: boolean
  /** "confirmed; 62.4 to 65.4 cc expected, …" of an unlikely figure that was typed twice; '' of any other. */
  readonly confirmed: string
  /** What stood there before, oldest first. */
  readonly earlier: readonly EarlierAnswer[]
}

export type Instrument = { readonly id: string; readonly name: string }

/** Every answer that was ever given at this visit, oldest first, with what was put in its place, by whom and why. */
export function readingLines(
  visit: VisitRecord,
  route: readonly RouteStep[],
  name: (personId: string) => string,
  instruments: readonly Instrument[],
): ReadingLine[] {
  const words = instrumentWords(instruments)
  const labels = new Map(route.map((step) => [keyText(step), step.label]))
  return readingChains(visit.readings).flatMap((chain) => {
    const [first] = chain
    const last = chain.at(-1)
    if (!first || !last) return []
    const step = stepKeyOf(first.set)
    const label = labels.get(keyText(step)) ?? capital(step.stepId.replaceAll('-', ' '))
    return [{ step: label, ...lineOf(last, chain.slice(0, -1), name, words) }]
  })
}

function lineOf(
  last: HistoryEntry,
  before: readonly HistoryEntry[],
  name: (personId: string) => string,
  instrument: (set: HistoryEntry['set']) => string,
): Omit<ReadingLine, 'step'> {
  const { point, set } = last
  const kind = point.kind as ReadingKind
  const withdrawn = point.correction === 'withdraw'
  return {
    id: point.id,
    kind,
    label: readingSpecs[kind].label,
    point: pointLabel(point.point),
    text: withdrawn ? 'withdrawn' : wordsOf(last),
    notTaken: point.notTaken,
    by: name(set.byId),
    at: set.takenAt,
    instrument: instrument(set),
    correction: point.reason,
    withdrawn,
    filled: !withdrawn && point.filled,
    confirmed: withdrawn ? '' : confirmedText(point),
    earlier: before.map((entry) => ({
      text: wordsOf(entry),
      by: name(entry.set.byId),
      at: entry.set.takenAt,
    })),
  }
}

const wordsOf = ({ point }: HistoryEntry): string => answerWords({ ...point, kind: point.kind as ReadingKind })

function instrumentWords(instruments: readonly Instrument[]) {
  const names = new Map(instruments.map(({ id, name }) => [id, name]))
  return ({ instrumentId, instrumentCheckedOn }: HistoryEntry['set']): string => {
    const name = instrumentId === null ? undefined : names.get(instrumentId)
    if (name === undefined) return ''
    if (instrumentCheckedOn === null) return name
    return instrumentCheckedOn === '' ? `${name}, never checked` : `${name}, last checked ${instrumentCheckedOn}`
  }
}
