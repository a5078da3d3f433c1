import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { roundMinor } from '@/lib/core/money/totals'
import { stepLabels } from '@/lib/core/route/steps'
import { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { pageOfRows, rowsOfPage, type Paged } from './paging'
import type { Row } from './tables'

const orderOfSteps = Object.keys(stepLabels)
/** A step's place on the route, as SQL; what no step asks for stands last. Its words are the program's own. */
const placeOfStep = Prisma.raw(
  `CASE "stepId" ${orderOfSteps.map((stepId, place) => `WHEN '${stepId}' THEN ${place}`).join(' ')} ELSE 999 END`,
)
const inOrder = Prisma.sql`ORDER BY CASE WHEN "retiredAt" IS NULL THEN 0 ELSE 1 END, ${placeOfStep}, "text", "id"`
const columns = Prisma.raw('"id", "stepId", "text", "unitMinor", "taxBasisPoints", "retiredAt", "version"')

type PriceItemRow = Pick<
  Row<'PriceItem'>,
  'id' | 'stepId' | 'text' | 'unitMinor' | 'taxBasisPoints' | 'retiredAt' | 'version'
>

export async function priceItemById(reader: Reader, id: string) {
  const item = await reader.priceItem.findUnique({ where: { id } })
  if (!item) throw new RefusedError({ code: 'not-found', message: 'There is no such price on the list.' })
  return item
}

/** A page of them in the order of the route, those in use first. */
export async function listPriceItems(reader: Reader, page: number): Promise<Paged<PriceItemRow>> {
  const { skip, take } = rowsOfPage(page)
  return pageOfRows(
    await reader.$queryRaw<PriceItemRow[]>`
      SELECT ${columns} FROM "PriceItem" ${inOrder} LIMIT ${take} OFFSET ${skip}`,
  )
}

/** All that can be asked for, in the order of the route. */
export const activePriceItems = (reader: Reader): Promise<PriceItemRow[]> =>
  reader.$queryRaw`SELECT ${columns} FROM "PriceItem" WHERE "retiredAt" IS NULL ${inOrder}`

export type StepPrice = { readonly unitMinor: number; readonly text: string; readonly taxBasisPoints: number }

/** What the list asks for each step, a head. Several items of one step add up, each with its own share of the tax. */
export async function pricesByStep(reader: Reader): Promise<Readonly<Record<string, StepPrice>>> {
  const prices: Record<string, StepPrice> = {}
  for (const item of await activePriceItems(reader)) {
    if (item.stepId === '') continue
    const before = prices[item.stepId]
    prices[item.stepId] = before ? together(before, item) : own(item)
  }
  return prices
}

const own = ({ unitMinor, text, taxBasisPoints }: StepPrice): StepPrice => ({ unitMinor, text, taxBasisPoints })

function together(a: StepPrice, b: StepPrice): StepPrice {
  const unitMinor = a.unitMinor + b.unitMinor
  const tax = a.unitMinor * a.taxBasisPoints + b.unitMinor * b.taxBasisPoints
  return {
    unitMinor,
    text: `${a.text}, ${b.text}`,
    taxBasisPoints: unitMinor === 0 ? a.taxBasisPoints : roundMinor(tax / unitMinor),
  }
}
