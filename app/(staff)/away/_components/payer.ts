/** At whose cost work is put right, as it is asked and as it is told. */
export const payerOptions = [
  { value: 'vendor', label: 'The vendor' },
  { value: 'shop', label: 'The shop' },
  { value: 'customer', label: 'The customer' },
] as const

export const atWhoseCost = (payer: string): string => (payer === '' ? '' : `at the ${payer}’s cost`)
