import { z } from 'zod'
import type { Balance } from '@/lib/core/money/balance'
import { moneyPaperKinds, type MoneyFacts, type PaperLine } from '@/lib/core/money/paper-facts'
import { paymentMethods } from '@/lib/core/money/payment'
import type { TaxAtRate } from '@/lib/core/money/totals'
import { shopFields } from './spec-sheet'
import { storedObject, type Fields } from './stored-json'

const text = z.string()
const whole = z.number().int()

const line = z.object({
  text,
  reason: text,
  quantityThousandths: whole,
  unitMinor: whole,
  taxName: text,
  taxMillionths: whole,
  netMinor: whole,
  line: whole,
} satisfies Fields<PaperLine>)

const tax = z.object({
  name: text,
  rateMillionths: whole,
  netMinor: whole,
  taxMinor: whole,
} satisfies Fields<TaxAtRate>)

const facts = z.object({
  kind: z.enum(moneyPaperKinds),
  number: text,
  at: text,
  locale: text,
  timeZone: text,
  currency: text,
  shop: shopFields,
  jobNumber: text,
  customer: z.object({ name: text, address: text }),
  engine: text,
  heads: z.array(text),
  lines: z.array(line),
  taxes: z.array(tax),
  netMinor: whole,
  taxMinor: whole,
  totalMinor: whole,
  paidMinor: whole,
  balance: z.object({
    code: z.enum(['to-pay', 'to-refund', 'paid', 'nothing']),
    minor: whole,
  } satisfies Fields<Balance>),
  of: text,
  reason: text,
  payment: z
    .object({
      kind: z.enum(['deposit', 'payment', 'refund']),
      minor: whole,
      method: z.enum(paymentMethods),
      how: text,
      takenBy: text,
    })
    .nullable(),
} satisfies Fields<MoneyFacts>) satisfies z.ZodType<MoneyFacts>

/** Papers from when rates were kept in hundredths of a per cent: a hundredth of a per cent is a hundred millionths. */
const inMillionths = (basisPoints: number): number => basisPoints * 100
const factsInHundredths = facts.extend({
  lines: z.array(
    line
      .omit({ taxMillionths: true })
      .extend({ taxBasisPoints: whole })
      .transform(({ taxBasisPoints, ...kept }) => ({ ...kept, taxMillionths: inMillionths(taxBasisPoints) })),
  ),
  taxes: z.array(
    tax
      .omit({ rateMillionths: true })
      .extend({ basisPoints: whole })
      .transform(({ basisPoints, ...kept }) => ({ ...kept, rateMillionths: inMillionths(basisPoints) })),
  ),
}) satisfies z.ZodType<MoneyFacts>

export const moneyFacts = storedObject<MoneyFacts>('MoneyPaper.facts', factsInHundredths, facts)
