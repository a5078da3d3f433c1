/** One line at a bench: what, how much with its unit, and where. */
export type BenchLine = { readonly label: string; readonly value: string; readonly note: string }
