import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { roundMinor } from '@/lib/core/money/totals'
import { stepLabels } from '@/lib/core/route/steps'
import type { Reader } from './db'

const orderOfSteps = Object.keys(stepLabels)
/** What no step asks for stands last. */
const placeOf = (stepId: string): number => (stepId === '' ? orderOfSteps.length : orderOfSteps.indexOf(stepId))

export async function priceItemById(reader: Reader, id: string) {
  const item = await reader.priceItem.findUnique({ where: { id } })
  if (!item) throw new RefusedError({ code: 'not-found', message: 'There is no such price on the list.' })
  return item
}

/** In the order of the route; those in use first, retired ones after them. */
export async function listPriceItems(reader: Reader) {
  const items = await reader.priceItem.findMany({ orderBy: [{ text: 'asc' }, { id: 'asc' }] })
  return items.toSorted(
    (a, b) => Number(a.retiredAt !== null) - Number(b.retiredAt !== null) || placeOf(a.stepId) - placeOf(b.stepId),
  )
}

export const activePriceItems = async (reader: Reader) =>
  (await listPriceItems(reader)).filter((item) => item.retiredAt === null)

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
