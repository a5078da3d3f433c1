import { spotFaceDepth } from '../clearance/bolt-hole'
import { boltReach, dowelFit, type Reach } from '../clearance/bolt-reach'
import type { DeckCut, Motion } from '../clearance/rigid-motion'
import { acrossShare } from '../cut/plan-limits'
import { ok, type Result } from '../errors'
import { atDeeperEnd, deckNowFromNewDeckIn, mostGoneIn } from '../head-now/gone'
import { slotAfterCuts, type BoltLean } from '../head-now/hole-slot'
import type { ConsequencesInput } from './consequences-input'
import { inRecordsNames, type FigureKey } from './figure-names'
import { worstOf, type HeadOnDeck, type OfHead } from './heads-on-deck'

export type Bolts = {
  readonly boltHole: Result<OfHead<BoltLean>>
  readonly spotFaceIn: Result<number>
  readonly boltReach: Result<OfHead<Reach>>
  readonly dowelFit: Result<OfHead<Reach>>
}

/** What all the cuts together do to bolts and dowels. Ranges and units as in `consequences`. */
export function boltConsequences(input: ConsequencesInput, heads: readonly HeadOnDeck[]): Bolts {
  const spot = spotFace(input, heads)
  return {
    boltHole: inRecordsNames(
      worstOf(
        heads,
        (head) => lean(input, head),
        ({ slotIn, leanIn }) => -slotIn - leanIn * 1e-6,
      ),
      boltNames,
    ),
    spotFaceIn: spot,
    boltReach: spot.ok
      ? inRecordsNames(
          worstOf(heads, (head) => boltReach(deepest(head), spot.value, input.casting.threadLeftIn), leftOf),
          goneNames,
        )
      : spot,
    dowelFit: inRecordsNames(
      worstOf(heads, (head) => dowelFit(atDowels(input, head), input.casting.dowelDepthIn), leftOf),
      goneNames,
    ),
  }
}

const leftOf = ({ leftIn }: { readonly leftIn: number }): number => leftIn

/** The whole lean since the hole was drilled; this cut's alone while the cuts before are not known. */
const wholeLean = ({ cut }: ConsequencesInput, { deckAfter }: HeadOnDeck): Result<DeckCut | Motion> =>
  deckAfter.ok ? deckAfter : deckAfter.refusal.code === 'missing' ? ok(cut) : deckAfter

const lean = ({ casting, cut, deepEdge }: ConsequencesInput, { before }: HeadOnDeck): Result<BoltLean> =>
  slotAfterCuts(
    {
      lengthNewIn: casting.boltHoleLengthIn,
      holeDiameterIn: casting.boltHoleIn,
      boltDiameterIn: casting.boltIn,
      fromShallowEdgeIn: null,
    },
    before,
    cut,
    deepEdge,
  )

/** From new: seats that were squared to an earlier deck need less. */
function spotFace(input: ConsequencesInput, heads: readonly HeadOnDeck[]): Result<number> {
  const found = worstOf(
    heads,
    (head) => {
      const whole = wholeLean(input, head)
      const depth = whole.ok ? spotFaceDepth(whole.value, input.casting.spotFaceIn) : whole
      return depth.ok ? ok({ depthIn: depth.value }) : depth
    },
    ({ depthIn }) => -depthIn,
  )
  return inRecordsNames(found.ok ? ok(found.value.depthIn) : found, { spotFaceIn: 'spotFaceIn' })
}

const deepest = ({ after }: HeadOnDeck): number | null => after && mostGoneIn(after)

/** At the dowels where their place is on record, else at the deepest: that can only overstate what is gone there. */
function atDowels({ casting, deepEdge }: ConsequencesInput, { after }: HeadOnDeck): number | null {
  const { dowelXIn, milledWidthIn } = casting
  if (after === null || dowelXIn === undefined || milledWidthIn === undefined) return after && mostGoneIn(after)
  const share = dowelXIn / milledWidthIn
  if (!(share >= 0 && share <= 1)) return mostGoneIn(after)
  return Math.max(0, deckNowFromNewDeckIn(atDeeperEnd(after), acrossShare(share, deepEdge)))
}

const boltNames: Readonly<Record<string, FigureKey>> = {
  holeLengthIn: 'boltHoleLengthIn',
  holeDiameterIn: 'boltHoleIn',
  boltDiameterIn: 'boltIn',
}

const goneNames: Readonly<Record<string, FigureKey>> = {
  totalGoneIn: 'thicknessNewIn',
  threadLeftIn: 'threadLeftIn',
  spareDepthIn: 'dowelDepthIn',
}
