/** The tax of a line as a form has it: one of the shop's rates by its id, or a percentage that was typed. */
export type TaxChoice = { readonly rateId: string; readonly rateMillionths: number }

const mark = 'rate:'

/** How a rate stands in a form's field. Example: "rate:018f…". `rateIdOf` reads it back. */
export const rateField = (rateId: string): string => `${mark}${rateId}`

/** The id of the rate that a field names; '' when it holds a percentage, or nothing. */
export const rateIdOf = (text: string): string => (text.startsWith(mark) ? text.slice(mark.length) : '')
