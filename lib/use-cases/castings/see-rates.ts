import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { chamberForms, type ChamberForm } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import type { JudgedCut, Ruling } from '@/lib/core/rate/screen'
import { castingById } from '@/lib/data/castings'
import { db } from '@/lib/data/db'
import { castingFactsOf } from '@/lib/data/known-figures'
import { namedShopCuts, type NamedCut } from '@/lib/data/rate-cuts'
import { currentSettings } from '@/lib/data/settings'
import { judgedRecord, shownRate, type JudgedKept, type ShownRate } from '@/lib/dossier/casting-rate'
import { cutWords } from '@/lib/words/rate'

/** One head's cut as it stands behind a rate, or why it does not. */
export type CutOfRate = Pick<NamedCut, 'visitId' | 'headId' | 'tag' | 'jobNumber'> & {
  /** At the chamber's centroid; null: not known. */
  readonly depthThou: number | null
  readonly tookCc: number | null
  /** '' when it counts and nothing is to be said. */
  readonly whyNot: string
  readonly verdict: JudgedCut['verdict']
  readonly ruling: Ruling | null
}

export type RateOfForm = {
  readonly form: ChamberForm
  readonly rate: ShownRate
  /** The newest cuts disagree with the record. */
  readonly doubted: boolean
  /** The newest forty, newest first. */
  readonly cuts: readonly CutOfRate[]
}

/** What the shop's own cuts taught of one casting, by chamber form; forms that were never cut are left out. */
export async function seeRates(actor: Actor, castingId: string): Promise<RateOfForm[]> {
  must(allow(actor, 'casting.see'))
  const client = await db()
  const casting = await castingById(client, castingId)
  const settings = (await currentSettings(client)).values
  const forms: RateOfForm[] = []
  for (const form of chamberForms) {
    const named = await namedShopCuts(client, castingId, form)
    if (named.length === 0) continue
    const record = judgedRecord(castingFactsOf(casting, form), named, null, settings)
    const cuts = record.judged.flatMap((judged, at) => {
      const cut = named[at]
      return cut ? [shownCut(cut, judged, record)] : []
    })
    forms.push({ form, rate: shownRate(record), doubted: record.doubted, cuts: cuts.reverse() })
  }
  return forms
}

type Record = { readonly rate: { readonly ccPerThou: number }; readonly doubted: boolean }

function shownCut(cut: NamedCut, { taught, verdict }: JudgedKept, { rate, doubted }: Record): CutOfRate {
  const { visitId, headId, tag, jobNumber, ruling, rulingReason } = cut
  const tookCc = taught.cut ? taught.cut.beforeCc - taught.cut.afterCc : null
  const depthThou = taught.cut?.depthThou ?? null
  const expectedCc = depthThou === null ? null : rate.ccPerThou * depthThou
  const whyNot = cutWords({ verdict, whyNot: taught.whyNot, ruling, rulingReason, tookCc, expectedCc, doubted })
  return { visitId, headId, tag, jobNumber, depthThou, tookCc, whyNot, verdict, ruling }
}
