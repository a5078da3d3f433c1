/** Median seconds of one run over several passes; the first, in which the engine is still warming up, is thrown away. */
export function secondsOf(work: () => unknown, { passes = 5, forSeconds = 0.3 } = {}): number {
  const times: number[] = []
  for (let pass = 0; pass <= passes; pass++) {
    const start = performance.now()
    let runs = 0
    while (performance.now() - start < forSeconds * 1000) {
      for (let again = 0; again < 20; again++) work()
      runs += 20
    }
    if (pass > 0) times.push((performance.now() - start) / 1000 / runs)
  }
  return median(times)
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? NaN
}

export type Figure = {
  readonly work: string
  readonly measured: number
  readonly unit: string
  readonly goal: string
  readonly met: boolean
}
