/** The address of a job's paper, by its folder under `app/api/papers`. */
export const paper = (kind: string, number: string): string => `/api/papers/${kind}/${encodeURIComponent(number)}`

/** An invoice, a credit note or a receipt, by its id. */
export const moneyPaperHref = (paperId: string): string => `/api/papers/money/${paperId}`
