import type { Asked } from '@/lib/data/findings'
import type { Write } from '@/lib/data/write'
import type { AskFindingInput } from '@/lib/schemas/finding'
import { minorAt } from '@/lib/core/money/price-of'

export const askedOf = (ctx: Write, input: AskFindingInput, exponent: number): Asked => ({
  priceMinor: input.price === '' ? null : minorAt(input.price, exponent, 'price'),
  taxBasisPoints: input.tax,
  addsWork: input.addsWork.join(','),
  askedAt: ctx.now,
  askedHow: input.how,
  askedById: ctx.actor.personId,
})
