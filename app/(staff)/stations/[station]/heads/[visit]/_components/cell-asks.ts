import { newTouchOff } from '@/lib/core/at-mill/touch-off'
import { expected } from '@/lib/core/expected/expected'
import { questionsOf, type TypedFigure } from '@/lib/core/expected/questions'
import { stopsOf } from '@/lib/core/expected/stops'
import { figureKey, type ExpectedFacts } from '@/lib/core/expected/types'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { expectedWords, stopWords, unlikelyWords } from '@/lib/words/expected'
import type { Answers } from './answers'

/** What is said at one cell about the figure in it. */
export type CellAsk = {
  /** "63.9 ± 1.5 cc, the other chambers", in the unit that the cell shows; '' when nothing is expected. */
  readonly expected: (unit: string) => string
  /** It is what is wanted or the limit: where that stands at the cell it is not said twice. */
  readonly asWanted: boolean
  /** Why the figure is unlikely; '' when it is not. */
  readonly unlikely: string
  /** It was typed a second time, alike. */
  readonly confirmed: boolean
  /** What was likely meant, as it would be typed. */
  readonly slip: string | null
  /** Why it cannot be true beside the others; '' when it can. */
  readonly stop: string
}

export type CellAsks = Readonly<Record<string, CellAsk>>

/** The same rule as on the server, over what is typed so far. `keys`: the cells, by kind and point. */
export function cellAsks(keys: readonly string[], answers: Answers, kept: ExpectedFacts): CellAsks {
  const touchedOffAnew = answers['touch-off|']?.text === newTouchOff
  const facts: ExpectedFacts = { ...kept, mill: { ...kept.mill, touchedOffAnew } }
  const typed = keys.flatMap((key) => figureAt(key, answers[key]?.notTaken === null ? answers[key].text : ''))
  const known = { ...facts, here: { ...facts.here, ...valuesOf(typed) } }
  const questions = new Map(questionsOf(typed, facts).map((one) => [figureKey(one.kind, one.point), one]))
  const stops = stopsOf(known)
  return Object.fromEntries(
    keys.map((key) => {
      const [kind, point] = placeOf(key)
      const question = questions.get(key)
      const own = typed.find((one) => figureKey(one.kind, one.point) === key)
      const stop = own && stops.find((one) => one.keys.includes(key))
      const { [key]: _, ...beside } = known.here
      const held = expected(kind, point, { ...facts, here: beside })
      const { quantity } = readingSpecs[kind]
      return [
        key,
        {
          expected: (unit: string) => (held && quantity ? expectedWords(held, quantity, unit) : ''),
          asWanted: held !== null && (held.why.code === 'wanted' || held.why.code === 'limit'),
          unlikely: question ? unlikelyWords(question, own?.unit) : '',
          confirmed: question !== undefined && isAgain(key, question.value, answers[key]?.again ?? ''),
          slip: question?.slip?.text ?? null,
          stop: stop ? stopWords(stop) : '',
        },
      ]
    }),
  )
}

const placeOf = (key: string): readonly [kind: ReadingKind, point: string] => {
  const [kind = '', point = ''] = key.split('|')
  return [kind as ReadingKind, point]
}

const valuesOf = (typed: readonly TypedFigure[]) =>
  Object.fromEntries(typed.map(({ kind, point, value }) => [figureKey(kind, point), value]))

function figureAt(key: string, text: string): TypedFigure[] {
  const [kind, point] = placeOf(key)
  const { quantity } = readingSpecs[kind]
  const parsed = quantity && text.trim() !== '' ? parseFigure(text, quantity) : null
  return parsed?.ok ? [{ kind, point, ...parsed.value }] : []
}

const isAgain = (key: string, value: number, again: string): boolean =>
  figureAt(key, again).some((figure) => Math.abs(figure.value - value) < 1e-9)
