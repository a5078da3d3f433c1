import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { chamberForms, type ChamberForm } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import { castingRate, taughtBy } from '@/lib/core/rate/shop-cuts'
import { castingById } from '@/lib/data/castings'
import { db } from '@/lib/data/db'
import { castingFactsOf } from '@/lib/data/known-figures'
import { namedShopCuts, type NamedCut } from '@/lib/data/rate-cuts'
import { currentSettings } from '@/lib/data/settings'
import { shownRate, type ShownRate } from '@/lib/dossier/casting-rate'
import { centroidShareOf } from '@/lib/core/cut/split'

/** One head's cut as it stands behind a rate, or why it does not. */
export type CutOfRate = Pick<NamedCut, 'visitId' | 'headId' | 'tag' | 'jobNumber'> & {
  /** At the chamber's centroid; null: not known. */
  readonly depthThou: number | null
  readonly tookCc: number | null
  readonly whyNot: string
}

export type RateOfForm = {
  readonly form: ChamberForm
  readonly rate: ShownRate
  /** The newest forty, newest first. */
  readonly cuts: readonly CutOfRate[]
}

/** What the shop's own cuts taught of one casting, by chamber form; forms that were never cut are left out. */
export async function seeRates(actor: Actor, castingId: string): Promise<RateOfForm[]> {
  must(allow(actor, 'casting.see'))
  const client = await db()
  const casting = await castingById(client, castingId)
  const { depthSettingErrorThou } = (await currentSettings(client)).values
  const forms: RateOfForm[] = []
  for (const form of chamberForms) {
    const facts = castingFactsOf(casting, form)
    const named = await namedShopCuts(client, castingId, form)
    if (named.length === 0) continue
    const taught = named.map((one) => ({ ...one, ...taughtBy(one.cut, centroidShareOf(facts)) }))
    const cuts = taught.flatMap(({ cut }) => cut ?? []).reverse()
    forms.push({
      form,
      rate: shownRate(must(castingRate(must(rateOfRecord(facts)), cuts, null, depthSettingErrorThou))),
      cuts: taught.map(({ visitId, headId, tag, jobNumber, cut, whyNot }) => ({
        visitId,
        headId,
        tag,
        jobNumber,
        whyNot,
        depthThou: cut?.depthThou ?? null,
        tookCc: cut ? cut.beforeCc - cut.afterCc : null,
      })),
    })
  }
  return forms
}
