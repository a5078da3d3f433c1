import type { CastingFacts } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import { cutsThatProve, thouPerCc, type PriorKind, type Rate } from '@/lib/core/rate/rate'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import { castingRate, isProven, taughtBy } from '@/lib/core/rate/shop-cuts'
import type { Reader } from '@/lib/data/db'
import { newestShopCuts } from '@/lib/data/rate-cuts'
import { centroidShareOf } from '@/lib/core/cut/split'

/** A casting's rate as it is said and shown. */
export type ShownRate = {
  readonly thouPerCc: number
  /** Standard uncertainty as a part of the rate. */
  readonly uPart: number
  /** The shop's own cuts that stand behind it. */
  readonly cuts: number
  readonly prior: PriorKind
  readonly words: string
  readonly proven: boolean
}

export type RateAsked = {
  /** Null: a head whose casting is not on record goes by the trade's usual figure. */
  readonly castingId: string | null
  readonly form: string
  readonly facts: CastingFacts
  /** The depth asked: cuts of about that depth teach. Null: all of them. */
  readonly depthThou: number | null
  readonly depthErrorThou: number
  /** The visit at hand: what its own cut shows is learned on top. */
  readonly exceptVisitId?: string
}

/** What the record gives, and what the shop's own cuts of this casting and chamber form taught since. */
export async function learnedRate(reader: Reader, asked: RateAsked): Promise<Rate> {
  const { castingId, form, facts, depthThou, depthErrorThou, exceptVisitId } = asked
  const prior = must(rateOfRecord(facts))
  if (castingId === null) return prior
  const cuts = (await newestShopCuts(reader, castingId, form, exceptVisitId)).flatMap(
    (cut) => taughtBy(cut, centroidShareOf(facts)).cut ?? [],
  )
  return must(castingRate(prior, cuts, depthThou, depthErrorThou))
}

export const shownRate = (rate: Rate): ShownRate => ({
  thouPerCc: thouPerCc(rate).thouPerCc,
  uPart: rate.uCcPerThou / rate.ccPerThou,
  cuts: rate.cuts,
  prior: rate.prior,
  words: rateWords(rate),
  proven: isProven(rate),
})

const priorWords: Readonly<Record<PriorKind, string>> = {
  outline: 'from the traced opening',
  perimeter: 'from the perimeter: a first guess',
  none: 'the trade’s usual figure or the shop’s own, no cut behind it yet: cut in two passes',
}

function rateWords(rate: Rate): string {
  if (rate.cuts === 0) return priorWords[rate.prior]
  const learned = `learned from ${cutsWords(rate.cuts)}, uncertainty ± ${partWords(rate.uCcPerThou / rate.ccPerThou)}`
  return rate.prior === 'none' && rate.cuts < cutsThatProve ? `${learned}: cut in two passes` : learned
}

export const cutsWords = (cuts: number): string => (cuts === 1 ? '1 cut' : `${cuts} cuts`)

/** "3 %"; half a per cent and less is not claimed. */
export const partWords = (part: number): string => `${Math.max(1, Math.round(part * 100))} %`
