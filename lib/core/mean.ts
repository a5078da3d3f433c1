/** Sum over number of the values; there must be one at least. Example: 62.0 and 63.0 → 62.5. */
export const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** The mean, or null where there are no values. */
export const meanOrNull = (values: readonly number[]): number | null => (values.length === 0 ? null : mean(values))
