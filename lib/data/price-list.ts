import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { PickAsked } from '@/lib/core/find/pick'
import { roundMinor } from '@/lib/core/money/totals'
import { stepLabels } from '@/lib/core/route/steps'
import { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { pageOfRows, rowsOfPage, type Paged } from './paging'
import { mostRead, picksOf } from './picks'
import type { Row } from './tables'

const orderOfSteps = Object.keys(stepLabels)
/** A step's place on the route, as SQL; what no step asks for stands last. Its words are the program's own. */
const placeOfStep = Prisma.raw(
  `CASE i."stepId" ${orderOfSteps.map((stepId, place) => `WHEN '${stepId}' THEN ${place}`).join(' ')} ELSE 999 END`,
)
const inOrder = Prisma.sql`ORDER BY CASE WHEN i."retiredAt" IS NULL THEN 0 ELSE 1 END, ${placeOfStep}, i."text", i."id"`
const columns = Prisma.raw(
  `i."id", i."stepId", i."text", i."unitMinor", i."taxMillionths", i."taxRateId", i."retiredAt", i."version",
   r."name" AS "rateName", r."rateMillionths" AS "rateMillionths"`,
)
/** With the shop's tax that an item names, while that is in use. */
const items = Prisma.raw(`"PriceItem" i LEFT JOIN "TaxRate" r ON r."id" = i."taxRateId" AND r."retiredAt" IS NULL`)

type Item = Pick<
  Row<'PriceItem'>,
  'id' | 'stepId' | 'text' | 'unitMinor' | 'taxMillionths' | 'taxRateId' | 'retiredAt' | 'version'
>
type Joined = Item & { readonly rateName: string | null; readonly rateMillionths: number | null }
type PriceItemRow = Item & { readonly taxName: string }

/** An item that names a tax of the shop is taxed at that rate as it is today. */
const taxed = ({ rateName, rateMillionths, ...item }: Joined): PriceItemRow => ({
  ...item,
  taxName: rateName ?? '',
  taxMillionths: rateMillionths ?? item.taxMillionths,
  taxRateId: rateName === null ? null : item.taxRateId,
})

export async function priceItemById(reader: Reader, id: string): Promise<PriceItemRow> {
  const [item] = await reader.$queryRaw<Joined[]>`SELECT ${columns} FROM ${items} WHERE i."id" = ${id}`
  if (!item) throw new RefusedError({ code: 'not-found', message: 'There is no such price on the list.' })
  return taxed(item)
}

/** A page of them in the order of the route, those in use first. */
export async function listPriceItems(reader: Reader, page: number): Promise<Paged<PriceItemRow>> {
  const { skip, take } = rowsOfPage(page)
  const found = await reader.$queryRaw<Joined[]>`
      SELECT ${columns} FROM ${items} ${inOrder} LIMIT ${take} OFFSET ${skip}`
  return pageOfRows(found.map(taxed))
}

/** Lines of a picker before anything is typed: all steps of a route are among them. */
const picksAtOnce = 300

/** Items in use in the order of the route: the first of those asked for. */
export async function priceItemsToPick(reader: Reader, asked: PickAsked): Promise<Paged<PriceItemRow>> {
  const those = 'ids' in asked ? Prisma.sql`AND i."id" IN (${Prisma.join([...asked.ids])})` : Prisma.empty
  const found = await reader.$queryRaw<Joined[]>`
    SELECT ${columns} FROM ${items} WHERE i."retiredAt" IS NULL ${those} ${inOrder}
    LIMIT ${mostRead(asked, picksAtOnce)}`
  return picksOf(found.map(taxed), asked, picksAtOnce, ({ text }) => text)
}

/** More than a route has steps, many times over. */
const mostOfSteps = 1000

export type StepPrice = { readonly unitMinor: number; readonly text: string; readonly taxMillionths: number }

/** Items in use that are for a step, in the order of the route. */
export async function priceItemsOfSteps(reader: Reader): Promise<PriceItemRow[]> {
  const found = await reader.$queryRaw<Joined[]>`
    SELECT ${columns} FROM ${items} WHERE i."retiredAt" IS NULL AND i."stepId" <> '' ${inOrder} LIMIT ${mostOfSteps}`
  return found.map(taxed)
}

/** What the list asks for each step, a head. Several items of one step add up, each with its own share of the tax. */
export async function pricesByStep(reader: Reader): Promise<Readonly<Record<string, StepPrice>>> {
  const prices: Record<string, StepPrice> = {}
  for (const item of await priceItemsOfSteps(reader)) {
    const before = prices[item.stepId]
    prices[item.stepId] = before ? together(before, item) : own(item)
  }
  return prices
}

const own = ({ unitMinor, text, taxMillionths }: StepPrice): StepPrice => ({ unitMinor, text, taxMillionths })

function together(a: StepPrice, b: StepPrice): StepPrice {
  const unitMinor = a.unitMinor + b.unitMinor
  const tax = a.unitMinor * a.taxMillionths + b.unitMinor * b.taxMillionths
  return {
    unitMinor,
    text: `${a.text}, ${b.text}`,
    taxMillionths: unitMinor === 0 ? a.taxMillionths : roundMinor(tax / unitMinor),
  }
}
