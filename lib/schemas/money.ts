import { z } from 'zod'
import { parsePercent } from '@/lib/core/money/percent'
import { parseQuantity } from '@/lib/core/money/quantity'
import { rateIdOf, type TaxChoice } from '@/lib/core/money/tax-choice'
import { text } from './text'

const amountPattern = /^(?=.*\d)[\p{L}\p{Sc}\d.,'’\s]{1,30}$/u
const amountMessage = 'Enter an amount, such as 125 or 125.50.'

/** An amount as typed. How it is read is the shop's currency's and locale's to say: `parseAmount` in core reads it. */
export const amount = text().trim().regex(amountPattern, amountMessage)

/** An amount that may be left empty: ''. */
export const optionalAmount = z.union([z.literal(''), amount], amountMessage)

/** "8.875 %" → 88750 millionths; '' → 0. */
export const taxPercent = text()
  .trim()
  .transform((text, context): number => {
    const percent = parsePercent(text)
    if (percent.ok) return percent.value
    context.addIssue({
      code: 'custom',
      message: 'Enter a tax rate in percent, such as 8.25 or 8.875, or leave it empty.',
    })
    return z.NEVER
  })

/** One of the shop's rates, "rate:…", or a percentage as typed; '' is no tax. */
export const taxChoice = text()
  .trim()
  .max(80)
  .transform((text, context): TaxChoice => {
    const rateId = rateIdOf(text)
    if (rateId !== '') return { rateId, rateMillionths: 0 }
    const percent = taxPercent.safeParse(text)
    if (percent.success) return { rateId: '', rateMillionths: percent.data }
    context.addIssue({ code: 'custom', message: percent.error.issues[0]?.message ?? 'Choose a tax.' })
    return z.NEVER
  })

/** Whole pieces. */
export const quantity = text()
  .trim()
  .regex(/^[1-9]\d{0,3}$/, 'Enter a whole number, 1 or more.')
  .transform(Number)

/** Pieces or hours of a price line, "1.5", in thousandths. */
export const priceQuantity = text()
  .trim()
  .transform((text, context): number => {
    const thousandths = parseQuantity(text)
    if (thousandths.ok) return thousandths.value
    context.addIssue({ code: 'custom', message: thousandths.refusal.message })
    return z.NEVER
  })
