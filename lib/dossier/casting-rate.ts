import type { CastingFacts } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import { cutsThatProve, thouPerCc, type PriorKind, type Rate } from '@/lib/core/rate/rate'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import type { Scatter } from '@/lib/core/rate/learn'
import { oneAHead } from '@/lib/core/rate/one-a-head'
import { recordRate, type RecordRate } from '@/lib/core/rate/record-rate'
import type { JudgedCut } from '@/lib/core/rate/screen'
import { isProven, taughtBy, type TaughtCut } from '@/lib/core/rate/shop-cuts'
import type { Reader } from '@/lib/data/db'
import { newestShopCuts, type KeptCut } from '@/lib/data/rate-cuts'
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
  readonly settings: ScatterSettings
  /** The visit at hand: what its own cut shows is learned on top. */
  readonly exceptVisitId?: string
}

export type JudgedKept = {
  readonly cut: KeptCut
  readonly taught: TaughtCut
  readonly verdict: JudgedCut['verdict']
  readonly z: number | null
}

export type JudgedRecord = Omit<RecordRate, 'judged'> & {
  /** By the day of the last pass, oldest first. */
  readonly judged: readonly JudgedKept[]
}

type ScatterSettings = { readonly depthSettingErrorThou: number; readonly betweenHeadPart: number }

/** What errs besides the cc, by the shop's settings. */
export const scatterOf = ({ depthSettingErrorThou, betweenHeadPart }: ScatterSettings): Scatter => ({
  depthErrorThou: depthSettingErrorThou,
  betweenHeadPart,
})

/** A record's rate from its cuts, each with its verdict; `depthThou`: the depth asked, null: all cuts alike. */
export function judgedRecord(
  facts: CastingFacts,
  kept: readonly KeptCut[],
  depthThou: number | null,
  settings: ScatterSettings,
): JudgedRecord {
  const share = centroidShareOf(facts)
  const cuts = oneAHead(
    kept.map((cut) => ({
      headId: cut.headId,
      cut,
      taught: taughtBy(cut.cut, share, settings.depthSettingErrorThou),
    })),
  )
  const known = cuts.filter(({ taught }) => taught.cut !== null)
  const toJudge = known.flatMap(({ taught, cut }) =>
    taught.cut ? [{ ...taught.cut, ruling: cut.ruling, questioned: cut.questioned }] : [],
  )
  const record = must(recordRate(must(rateOfRecord(facts)), toJudge, depthThou, scatterOf(settings)))
  const judged = cuts.map((one) => {
    const at = known.indexOf(one)
    return { ...one, ...(record.judged[at] ?? { verdict: 'not-like-for-like' as const, z: null }) }
  })
  return { ...record, judged }
}

/** What the record gives, and what the shop's own cuts of this casting and chamber form taught since. */
export async function learnedRecord(reader: Reader, asked: RateAsked): Promise<JudgedRecord> {
  const { castingId, form, facts, depthThou, settings, exceptVisitId } = asked
  const kept = castingId === null ? [] : await newestShopCuts(reader, castingId, form, exceptVisitId)
  return judgedRecord(facts, kept, depthThou, settings)
}

export const shownRate = ({ rate, doubted }: Pick<RecordRate, 'rate' | 'doubted'>): ShownRate => ({
  thouPerCc: thouPerCc(rate).thouPerCc,
  uPart: rate.uCcPerThou / rate.ccPerThou,
  cuts: rate.cuts,
  prior: rate.prior,
  words: doubted ? `${rateWords(rate)}; ${doubtWords}` : rateWords(rate),
  proven: isProven(rate) && !doubted,
})

/** The record and the newest cuts disagree. */
const doubtWords = 'the newest cuts disagree with this record: check its outline'

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
