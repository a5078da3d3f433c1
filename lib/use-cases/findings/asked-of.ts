import type { Asked } from '@/lib/data/findings'
import type { Write } from '@/lib/data/write'
import type { AskFindingInput } from '@/lib/schemas/finding'
import type { AmountManner } from '@/lib/core/money/amount'
import { minorAt, type LineTax } from '@/lib/core/money/price-of'

export const askedOf = (ctx: Write, input: AskFindingInput, tax: LineTax, manner: AmountManner): Asked => ({
  priceMinor: input.price === '' ? null : minorAt(input.price, manner, 'price'),
  ...tax,
  addsWork: input.addsWork.join(','),
  askedAt: ctx.now,
  askedHow: input.how,
  askedById: ctx.actor.personId,
})
