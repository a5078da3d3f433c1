import type { Write } from '@/lib/data/write'
import type { AskFindingInput } from '@/lib/schemas/job'
import { minorAt } from '../jobs/prices-of'

export const askedOf = (w: Write, input: AskFindingInput, exponent: number) => ({
  priceMinor: input.price === '' ? null : minorAt(input.price, exponent, 'price'),
  addsWork: input.addsWork.join(','),
  askedAt: w.now,
  askedHow: input.how,
  askedById: w.actor.personId,
})
