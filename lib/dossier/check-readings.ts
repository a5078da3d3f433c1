import { RefusedError } from '@/lib/core/errors'
import { questionsOf, type Question, type TypedFigure } from '@/lib/core/expected/questions'
import { stopsOf } from '@/lib/core/expected/stops'
import { figureKey, type ExpectedFacts } from '@/lib/core/expected/types'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { RouteStep } from '@/lib/core/route/types'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Reader } from '@/lib/data/db'
import { storedHeldAgainst } from '@/lib/data/stored/held-against'
import { questionWords, stopWords } from '@/lib/words/expected'
import { pointsOf, type Confirmed, type Entry } from './add-readings'
import { loadDossiers, type Dossier } from './dossier'
import { expectedFacts, withTyped } from './expected-facts'
import { matesIn } from './of-mates'

/** One figure that is to be kept, and how it was typed the second time. */
export type AskedFigure = TypedFigure & { readonly again: string }

/**
 * Refuses readings that cannot all be true, and unlikely ones that were not typed a second time: each is said at its cell.
 *
 * @returns what each confirmed one was held against
 */
export async function checkReadings(reader: Reader, head: Dossier, step: RouteStep, entry: Entry): Promise<Confirmed> {
  const again = new Map(entry.readings.map((one) => [figureKey(one.kind, one.point), one.again ?? '']))
  const figures = pointsOf(entry.readings).flatMap(({ value, ...point }) =>
    value === null ? [] : [{ ...point, value, again: again.get(figureKey(point.kind, point.point)) ?? '' }],
  )
  if (figures.length === 0) return new Map()
  const mates = head.mates.length === 0 ? [] : matesIn(await loadDossiers(reader, { pairsOf: [head.visit.id] }), head)
  const facts = await expectedFacts(reader, head, step, mates, entry.conditions)
  return confirmedOf(figures, withTyped(facts, entry.readings))
}

/** The rule itself, by the facts that the figures are held against. */
export function confirmedOf(figures: readonly AskedFigure[], facts: ExpectedFacts): Confirmed {
  refuseImpossible(figures, facts)
  const questions = questionsOf(figures, facts)
  const open = questions.filter((question) => !isConfirmed(question, figures))
  const [first] = open
  if (first) {
    const fields = Object.fromEntries(open.map((one) => [figureKey(one.kind, one.point), questionWords(one)]))
    throw new RefusedError({ code: 'unlikely', message: questionWords(first), fields })
  }
  return new Map(questions.map((one) => [figureKey(one.kind, one.point), storedHeldAgainst.write(heldAgainst(one))]))
}

const heldAgainst = ({ expected: { value, low, high, lowWhy, highWhy }, side, oneOf }: Question) => ({
  expected: value,
  low,
  high,
  why: side === 'low' ? lowWhy : highWhy,
  oneOf,
})

/** Only what is typed now can be put right here: a stop that lies in other readings alone is none of this go. */
function refuseImpossible(figures: readonly AskedFigure[], facts: ExpectedFacts): void {
  const typed = new Map(figures.map((one) => [figureKey(one.kind, one.point), one.value]))
  const stops = stopsOf({ ...facts, here: { ...facts.here, ...Object.fromEntries(typed) } }).filter(({ keys }) =>
    keys.some((key) => typed.has(key)),
  )
  const [first] = stops
  if (!first) return
  const fields = Object.fromEntries(
    stops.flatMap((stop) => stop.keys.filter((key) => typed.has(key)).map((key) => [key, stopWords(stop)])),
  )
  throw new RefusedError({ code: 'impossible', message: stopWords(first), fields })
}

/** Typed a second time means the same figure, however it is written. */
function isConfirmed({ kind, point, value }: Question, figures: readonly AskedFigure[]): boolean {
  const asked = figures.find((one) => one.kind === kind && one.point === point)
  return asked !== undefined && sameFigure(kind, asked.again, value)
}

function sameFigure(kind: ReadingKind, again: string, value: number): boolean {
  const { quantity } = readingSpecs[kind]
  if (again.trim() === '' || !quantity) return false
  const parsed = parseFigure(again, quantity)
  return parsed.ok && Math.abs(parsed.value.value - value) < 1e-9
}
