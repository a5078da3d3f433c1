import type { CastingFacts } from '../casting/figures'
import type { HeadNow } from '../cut/plan-types'
import { goneOfHead } from '../cut/plan-limits'
import { refuse, type Result } from '../errors'
import { deckNow, type DeckNow, type Edge } from '../head-now/deck-now'
import { atDeeperEnd, goneByCut, sumOfGone, type Gone } from '../head-now/gone'
import { recordFromDeckNow } from '../head-now/record-now'
import type { SeatReading } from '../head-now/seat-now'

/** One head that is to be cut, as it lies on the deck it has now and on the one it will have. */
export type HeadOnDeck = {
  readonly tag: string
  /** Metal gone since new, before this cut and after it; null: not known. */
  readonly before: Gone | null
  readonly after: Gone | null
  readonly deckBefore: Result<DeckNow>
  readonly deckAfter: Result<DeckNow>
  /** Places and angles to the deck of now; as on record while the metal gone is not known. */
  readonly casting: CastingFacts
  readonly seatReadings: readonly SeatReading[]
  readonly chambers: number | undefined
}

type Cut = { readonly flatIn: number; readonly angleIn: number }

/** The heads of a plan over their decks before and after its cut. Ranges and refusals as for `deckNow`. */
export function headsOnDeck(
  heads: readonly HeadNow[],
  casting: CastingFacts,
  { flatIn, angleIn }: Cut,
  deepEdge: Edge,
): readonly HeadOnDeck[] {
  const cut = goneByCut({ flatIn, angleIn, deepEdge })
  return heads.map((head) => {
    const before = goneOfHead(head, casting.thicknessNewIn ?? null)
    const after = before && sumOfGone([before, cut])
    const deckBefore = deckOf(before, deepEdge, casting)
    return {
      tag: head.tag,
      before,
      after,
      deckBefore,
      deckAfter: deckOf(after, deepEdge, casting),
      casting: deckBefore.ok ? recordFromDeckNow(casting, deckBefore.value) : casting,
      seatReadings: head.seatReadings ?? [],
      chambers: head.chambers,
    }
  })
}

/** At the end where more is gone: chambers are not told apart along the head. */
const deckOf = (gone: Gone | null, deepEdge: Edge, { milledWidthIn }: CastingFacts): Result<DeckNow> =>
  gone === null ? notKnown : deckNow(atDeeperEnd(gone), deepEdge, milledWidthIn)

const notKnown = refuse('missing', 'Needs new head thickness, metal removed before this job.', {
  needs: ['thicknessNewIn', 'removedBeforeIn'],
})

/** An answer for one of several heads, with whose it is; `notKnownOf`: the heads that it could not be had for. */
export type OfHead<T> = T & { readonly tag: string; readonly notKnownOf: readonly string[] }

/**
 * The worst of several heads' answers: the one with the least figure. Refused only when no head has an answer; the first
 * head's refusal then says why.
 */
export function worstOf<T extends object>(
  heads: readonly HeadOnDeck[],
  answerOf: (head: HeadOnDeck) => Result<T>,
  figureOf: (answer: T) => number,
): Result<OfHead<T>> {
  const answers = heads.map((head) => ({ tag: head.tag, answer: answerOf(head) }))
  const notKnownOf = answers.flatMap(({ tag, answer }) => (answer.ok ? [] : [tag]))
  const known = answers.flatMap(({ tag, answer }) => (answer.ok ? [{ ...answer.value, tag, notKnownOf }] : []))
  const [first, ...others] = known
  if (first) {
    const value = others.reduce((worst, one) => (figureOf(one) < figureOf(worst) ? one : worst), first)
    return { ok: true, value }
  }
  const refused = answers.find(({ answer }) => !answer.ok)?.answer
  return refused && !refused.ok ? refused : refuse('missing', 'Needs a head.', { needs: ['heads'] })
}
