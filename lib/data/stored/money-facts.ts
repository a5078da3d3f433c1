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
  taxBasisPoints: whole,
  netMinor: whole,
  line: whole,
} satisfies Fields<PaperLine>)

const tax = z.object({ name: text, basisPoints: whole, netMinor: whole, taxMinor: whole } satisfies Fields<TaxAtRate>)

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

export const moneyFacts = storedObject<MoneyFacts>('MoneyPaper.facts', facts)
