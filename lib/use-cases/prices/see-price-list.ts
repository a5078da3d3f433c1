import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { taxText } from '@/lib/core/money/percent'
import { rateField } from '@/lib/core/money/tax-choice'
import type { RouteRules } from '@/lib/core/route/rules'
import { stepLabel } from '@/lib/core/route/table'
import type { StepId } from '@/lib/core/route/step-ids'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { mapPage, type Paged } from '@/lib/data/paging'
import { currentRules } from '@/lib/data/settings'
import { listPriceItems, priceItemById } from '@/lib/data/price-list'

export type PriceItemSeen = {
  readonly id: string
  readonly stepId: StepId | ''
  /** The step's name; '' when no step asks for it. */
  readonly step: string
  readonly text: string
  readonly unitMinor: number
  readonly taxMillionths: number
  readonly taxName: string
  /** The tax as the form's field has it. */
  readonly tax: string
  readonly retired: boolean
  readonly version: number
}

type Row = Awaited<ReturnType<typeof listPriceItems>>['rows'][number]

function seen({ id, text, unitMinor, taxMillionths, taxName, version, ...row }: Row, rules: RouteRules): PriceItemSeen {
  const tax = row.taxRateId === null ? taxText(taxMillionths) : rateField(row.taxRateId)
  const stepId = row.stepId as StepId | ''
  const step = stepId === '' ? '' : stepLabel(stepId, rules)
  const retired = row.retiredAt !== null
  return { id, stepId, step, text, unitMinor, taxMillionths, taxName, tax, version, retired }
}

export async function seePriceList(actor: Actor, page = 1): Promise<Paged<PriceItemSeen>> {
  must(allow(actor, 'price.see'))
  const client = await db()
  const rules = await currentRules(client)
  return mapPage(await listPriceItems(client, page), (item) => seen(item, rules))
}

export async function seePriceItem(
  actor: Actor,
  itemId: string,
): Promise<{ item: PriceItemSeen; last: LastChange | null }> {
  must(allow(actor, 'price.see'))
  const client = await db()
  const item = await priceItemById(client, itemId)
  return {
    item: seen(item, await currentRules(client)),
    last: await lastChange(client, 'price-item', itemId),
  }
}
