/** What is left between shop and customer: the one value that every sentence about it is made from. */
export type Balance = {
  readonly code: 'to-pay' | 'to-refund' | 'paid' | 'nothing'
  /** Never below zero. */
  readonly minor: number
}

/**
 * How a job stands, from what it comes to and what was paid, in minor units. `nothing`: nothing is charged and nothing paid.
 * Example: 314.00 charged and 130.00 paid → to pay, 18400.
 */
export function balanceOf({
  totalMinor,
  dueMinor,
}: {
  readonly totalMinor: number
  readonly dueMinor: number
}): Balance {
  if (dueMinor > 0) return { code: 'to-pay', minor: dueMinor }
  if (dueMinor < 0) return { code: 'to-refund', minor: -dueMinor }
  return { code: totalMinor === 0 ? 'nothing' : 'paid', minor: 0 }
}
