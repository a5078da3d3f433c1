import { z } from 'zod'
import { requiredText, optionalDay, words } from './figure'
import { newPassword, personName, signInName } from './person'
import { text } from './text'

export const papers = ['letter', 'a4'] as const

/** True when `Intl` takes it: the browser and the server know the same names. */
const known = (make: () => unknown): boolean => {
  try {
    make()
    return true
  } catch {
    return false
  }
}

export const timeZone = text()
  .trim()
  .refine(
    (zone) => zone !== '' && known(() => new Intl.DateTimeFormat('en', { timeZone: zone })),
    'Pick a time zone from the list, such as America/Chicago.',
  )
export const locale = text()
  .trim()
  .refine(
    (tag) => tag !== '' && known(() => new Intl.NumberFormat(tag)),
    'Enter a language and country, such as en-US or en-GB.',
  )
export const currency = text()
  .trim()
  .toUpperCase()
  .refine(
    (code) => known(() => new Intl.NumberFormat('en', { style: 'currency', currency: code })),
    'Choose a currency.',
  )

const shopWords = {
  name: requiredText('Enter the name of the shop.', 120),
  address: words(400),
  phone: words(60),
  locale,
  paper: z.enum(papers),
  /** Whose telephone numbers are typed without a country's code; '': that of the language. */
  country: text()
    .regex(/^([A-Z]{2})?$/, 'Choose a country.')
    .default(''),
}

/** Zone and currency are fixed at set-up: figures already recorded would change their meaning. */
export const shopFactsSchema = z.object({ ...shopWords, timeZone, currency })
export const ownerSchema = z.object({ name: personName, signIn: signInName, password: newPassword })
export const setUpShopSchema = z
  .object({
    code: requiredText('Enter the code shown in the console.', 100),
    shop: shopFactsSchema,
    owner: ownerSchema,
    /** The password once more: a slip in it would lock the only owner out. */
    again: text(),
  })
  .refine(({ owner, again }) => owner.password === again, {
    path: ['again'],
    message: 'The passwords differ. Enter the same one twice.',
  })
export const changeShopSchema = z.object({ ...shopWords, version: z.number().int() })

export const instrumentKinds = ['burette', 'gauge', 'flow bench', 'other'] as const
export const addInstrumentSchema = z.object({
  name: requiredText('Enter the name on it.', 120),
  kind: z.enum(instrumentKinds),
  lastCheckedOn: optionalDay,
  dueOn: optionalDay,
})
export const changeInstrumentSchema = addInstrumentSchema.extend({
  instrumentId: text(),
  version: z.number().int(),
  retired: z.boolean(),
})

export type ShopFacts = z.output<typeof shopFactsSchema>
export type FirstOwner = z.output<typeof ownerSchema>
export type SetUpShopForm = z.input<typeof setUpShopSchema>
export type SetUpShop = z.output<typeof setUpShopSchema>
export type ChangeShop = z.output<typeof changeShopSchema>
export type AddInstrument = z.output<typeof addInstrumentSchema>
export type ChangeInstrument = z.output<typeof changeInstrumentSchema>
