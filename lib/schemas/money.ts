import { z } from 'zod'

const amountPattern = /^\d{1,9}([.,]\d{1,3})?$/
const amountMessage = 'Enter an amount, such as 125 or 125.50.'

/** An amount as typed. How many decimals it may have is the currency's to say: `minorOf` in core reads it. */
export const amount = z.string().trim().regex(amountPattern, amountMessage)

/** An amount that may be left empty: ''. */
export const optionalAmount = z.union([z.literal(''), amount], amountMessage)

/** "8.25" per cent → 825 basis points; '' → 0. */
export const taxPercent = z
  .string()
  .trim()
  .regex(/^(\d{1,2}([.,]\d{1,2})?)?$/, 'Enter a tax rate in percent, such as 8.25, or leave it empty.')
  .transform((text) => {
    const [whole = '', rest = ''] = text.split(/[.,]/)
    return Number(whole || '0') * 100 + Number(rest.padEnd(2, '0'))
  })

export const quantity = z
  .string()
  .trim()
  .regex(/^[1-9]\d{0,3}$/, 'Enter a whole number, 1 or more.')
  .transform(Number)
