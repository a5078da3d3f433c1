import type { Actor } from '@/lib/core/access/roles'
import type { StepId } from '@/lib/core/route/step-ids'
import { rateField } from '@/lib/core/money/tax-choice'
import { addPriceItemSchema } from '@/lib/schemas/price'
import { addTaxRateSchema } from '@/lib/schemas/tax'
import { addPriceItem } from '@/lib/use-cases/prices/add-price-item'
import { addTaxRate } from '@/lib/use-cases/taxes/add-tax-rate'

/** The taxes of the invented shop's town, by their percentage: what a demo price line names. */
export type DemoTaxes = Readonly<Record<string, string>>

export async function seedTaxes(actor: Actor, now: Date): Promise<DemoTaxes> {
  const add = async (name: string, rate: string, isDefault: boolean) =>
    rateField((await addTaxRate(actor, addTaxRateSchema.parse({ name, rate, isDefault }), { now })).rateId)
  return { '8.25': await add('Sales tax', '8.25', true), '6.5': await add('Parts tax', '6.5', false) }
}

/** What the demo's shop asks for one head, in its currency. Every amount is invented. */
const prices: readonly (readonly [StepId | '', text: string, unitPrice: string])[] = [
  ['wash-in', 'Strip and wash', '45.00'],
  ['crack', 'Crack check', '40.00'],
  ['pressure', 'Pressure check', '55.00'],
  ['thickness', 'Thickness and straightness', '15.00'],
  ['chambers', 'Chambers measured', '30.00'],
  ['seat-before', 'Seats checked before', '15.00'],
  ['flow', 'Flow run', '85.00'],
  ['guides', 'Guides', '120.00'],
  ['inserts', 'Seat inserts', '180.00'],
  ['port', 'Port work', '620.00'],
  ['open-chamber', 'Chambers opened', '140.00'],
  ['angle-cut', 'Angle cut', '140.00'],
  ['flat-cut', 'Flat cut, surfaced', '95.00'],
  ['deburr', 'Deburred and chamfered', '10.00'],
  ['intake', 'Intake side corrected', '65.00'],
  ['bolt-seats', 'Bolt seats squared', '50.00'],
  ['bolt-fit', 'Bolt holes fitted', '40.00'],
  ['bolt-reach', 'Bolt reach checked', '10.00'],
  ['dowel-fit', 'Dowels fitted', '10.00'],
  ['seat-after', 'Seats checked after', '15.00'],
  ['seat-work', 'Seat work', '110.00'],
  ['heights', 'Assembly heights set', '30.00'],
  ['finished', 'Measured when finished', '20.00'],
  ['wash-out', 'Final wash', '20.00'],
  ['assemble', 'Assembled', '60.00'],
  ['leak', 'Leak test', '15.00'],
  ['', 'Gaskets and small parts', '18.00'],
  ['', 'Courier', '22.50'],
]

export async function seedPrices(actor: Actor, taxes: DemoTaxes, now: Date): Promise<void> {
  for (const [stepId, text, unitPrice] of prices) {
    const tax = taxes[text === 'Gaskets and small parts' ? '6.5' : '8.25'] ?? ''
    await addPriceItem(actor, addPriceItemSchema.parse({ stepId, text, unitPrice, tax }), { now })
  }
}
