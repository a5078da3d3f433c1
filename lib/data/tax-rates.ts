import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { taxText, taxWords } from '@/lib/core/money/percent'
import type { LineTax } from '@/lib/core/money/price-of'
import { rateField, type TaxChoice } from '@/lib/core/money/tax-choice'
import type { Reader, Tx } from './db'
import { mostInUse } from './in-use'
import { inUseFirst, pageOfRows, rowsOfPage, type Paged } from './paging'
import type { Row } from './tables'

export async function taxRateById(reader: Reader, id: string): Promise<Row<'TaxRate'>> {
  const rate = await reader.taxRate.findUnique({ where: { id } })
  if (!rate) throw new RefusedError({ code: 'not-found', message: 'There is no such tax here.' })
  return rate
}

/** A page of them, those in use first. */
export async function listTaxRates(reader: Reader, page: number): Promise<Paged<Row<'TaxRate'>>> {
  return pageOfRows(
    await reader.taxRate.findMany({
      orderBy: [inUseFirst, { name: 'asc' }, { id: 'asc' }],
      ...rowsOfPage(page),
    }),
  )
}

/** What a price line picks its tax from: the shop's own one first. */
export type TaxPick = LineTax & { readonly value: string; readonly label: string; readonly isDefault: boolean }

export async function taxPicks(reader: Reader): Promise<TaxPick[]> {
  const rates = await reader.taxRate.findMany({
    where: { retiredAt: null },
    orderBy: [{ isDefault: 'desc' }, { name: 'asc' }, { id: 'asc' }],
    take: mostInUse.taxes,
  })
  return rates.map(({ id, name, rateMillionths, isDefault }) => ({
    value: rateField(id),
    label: taxWords(name, rateMillionths),
    isDefault,
    taxName: name,
    taxMillionths: rateMillionths,
  }))
}

/** The tax that a form chose, as it is today. A retired rate is not given to new lines. `field`: where the form has it. */
export async function taxOf(reader: Reader, choice: TaxChoice, field: string): Promise<LineTax> {
  if (choice.rateId === '') return { taxName: '', taxMillionths: choice.rateMillionths }
  const rate = await reader.taxRate.findUnique({ where: { id: choice.rateId } })
  if (rate && rate.retiredAt === null) return { taxName: rate.name, taxMillionths: rate.rateMillionths }
  const message = 'This tax is not in use any more. Choose another.'
  throw new RefusedError({ code: 'invalid', message, fields: { [field]: message } })
}

/** A tax that was written down, as the form's field has it: the rate of that name, or the percentage. */
export function taxField({ taxName, taxMillionths }: LineTax, picks: readonly TaxPick[]): string {
  const words = taxWords(taxName, taxMillionths)
  return picks.find(({ label }) => label === words)?.value ?? taxText(taxMillionths)
}

/** Two taxes in use may not have one name. */
export async function refuseSecondName(tx: Tx, name: string, ownId: string): Promise<void> {
  const other = await tx.taxRate.findFirst({ where: { name, retiredAt: null, NOT: { id: ownId } } })
  if (!other) return
  const message = 'There is already a tax of this name.'
  throw new RefusedError({ code: 'invalid', message, fields: { name: message } })
}

/** No other tax is the one that new lines start with. */
export const leaveDefault = (tx: Tx, ownId: string): Promise<unknown> =>
  tx.taxRate.updateMany({ where: { isDefault: true, NOT: { id: ownId } }, data: { isDefault: false } })
