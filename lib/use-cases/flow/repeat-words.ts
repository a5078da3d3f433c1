import type { Repeatability } from '@/lib/core/flow/repeatability'

const percent = (part: number): string => `${(100 * part).toFixed(1)} %`

/** What repeats say of the bench, beside what the shop has set. */
export function repeatWords(found: Repeatability | null, setting: number): string {
  const set = `The shop’s setting is ${percent(setting)}`
  if (found === null) return `${set}: one standard deviation of a single run. There are no repeat runs to compare.`
  const lifts = found.lifts === 1 ? '1 lift' : `${found.lifts} lifts`
  return `From repeats here: ${percent(found.part)}, one standard deviation of a single run, pooled over ${lifts}. ${set}.`
}
