/** A number with its noun, in one or in many. Example: 1 → "1 line"; 3 → "3 lines". Derived: English plural, given. */
export const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`
