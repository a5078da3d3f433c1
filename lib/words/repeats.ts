import type { WildRepeat } from '../core/chamber/repeatability'

const cc = (value: number): string => `${value.toFixed(1)} cc`

/** "chamber 3: 62.1, 62.3 (mean 62.2)" */
export const standingText = (label: string, valuesCc: readonly number[]): string => {
  const mean = valuesCc.reduce((sum, value) => sum + value, 0) / valuesCc.length
  const said = valuesCc.length > 1 ? ` (mean ${mean.toFixed(1)})` : ''
  return `${label} reads ${valuesCc.map((value) => value.toFixed(1)).join(', ')}${said}`
}

/** Asked when a chamber that has a value is read anew. */
export function repeatQuestion(label: string, valuesCc: readonly number[], wild: WildRepeat | null): string {
  const off = wild
    ? ` It is ${cc(Math.abs(wild.offCc))} off, more than ${cc(wild.limitCc)}: read it a third time if you are not sure.`
    : ''
  return `${standingText(label, valuesCc)}. Choose: again, or instead of.${off}`
}
