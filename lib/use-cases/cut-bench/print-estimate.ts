import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { formatMoney } from '@/lib/core/money/format-money'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { estimatePaper, type EstimateData } from '@/lib/pdf/estimate'
import { seeEstimate } from './see-estimate'
import { shopBlock } from '@/lib/dossier/shop-block'
import { keptPaper, type Paper } from '@/lib/papers/kept-paper'
import { printSetting } from '@/lib/papers/print-spec'
import { dateWords } from '@/lib/core/shop/when-words'
import { withLogo } from '@/lib/papers/with-logo'

/** A kept estimate on one page; with its price for those who may see prices. */
export async function printEstimate(actor: Actor, id: string, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  const kept = await seeEstimate(actor, id)
  const shop = await shopOf(await db())
  const { priceMinor } = kept.answer
  const data: EstimateData = {
    language: shop.locale,
    shop: shopBlock(shop),
    number: kept.number,
    forWhom: kept.forWhom,
    on: dateWords(kept.at, shop),
    by: kept.by,
    casting: kept.castingName === '' ? 'not on record' : kept.castingName,
    chamberShape: kept.chamberShape,
    note: kept.note,
    answer: kept.answer,
    price: priceMinor === null ? '' : formatMoney(priceMinor, shop.currency, shop.locale),
  }
  return keptPaper(
    { kind: 'estimate', name: `estimate-${kept.number}.pdf`, data, setting: printSetting(shop, now) },
    withLogo(estimatePaper),
  )
}
