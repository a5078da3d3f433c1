import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { mapPage, type Paged } from '@/lib/data/paging'
import type { Row } from '@/lib/data/tables'
import { listTaxRates, taxPicks, taxRateById, type TaxPick } from '@/lib/data/tax-rates'

export type { TaxPick } from '@/lib/data/tax-rates'

export type TaxRateSeen = {
  readonly id: string
  readonly name: string
  readonly rateMillionths: number
  readonly isDefault: boolean
  readonly retired: boolean
  readonly version: number
}

const seen = ({ id, name, rateMillionths, isDefault, retiredAt, version }: Row<'TaxRate'>): TaxRateSeen => ({
  ...{ id, name, rateMillionths, isDefault, version },
  retired: retiredAt !== null,
})

export async function seeTaxRates(actor: Actor, page = 1): Promise<Paged<TaxRateSeen>> {
  must(allow(actor, 'price.see'))
  return mapPage(await listTaxRates(await db(), page), seen)
}

export async function seeTaxRate(
  actor: Actor,
  rateId: string,
): Promise<{ rate: TaxRateSeen; last: LastChange | null }> {
  must(allow(actor, 'price.see'))
  const client = await db()
  return { rate: seen(await taxRateById(client, rateId)), last: await lastChange(client, 'tax-rate', rateId) }
}

/** What a price line picks its tax from. */
export async function seeTaxPicks(actor: Actor): Promise<TaxPick[]> {
  must(allow(actor, 'price.see'))
  return taxPicks(await db())
}
