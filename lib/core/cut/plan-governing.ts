import { formatThou } from '../units/format-figure'
import type { CutCaution } from './cautions'
import type { OutOfTolerance, PlanInput } from './plan-types'
import { allChambers } from './plan-volumes'

const cc = (value: number): string => `${value.toFixed(1)} cc`

/** Which volume decides the depth, and what that leaves of the others, in whole sentences. */
export function governingWords(input: PlanInput, out: readonly OutOfTolerance[]): string {
  const { kind, targetCc, toleranceCc, presentNominal, equalise } = input
  if (kind === 'none') return 'No cut.'
  if (kind === 'flat' && input.flatDeck) return 'The thinnest corner goes to the wanted thickness.'
  if (kind === 'clean-up' || targetCc === null) return 'Only enough to make it flat. Stop at the depth given.'
  if (presentNominal)
    return `From the nominal volume to ${cc(targetCc)}; the chambers are not measured, so none can be told apart.`
  const count = allChambers(input).length
  if (equalise) return `The largest of ${chambers(count)} goes to ${cc(targetCc)}; ${openWords(out)}`
  const goes = `The mean of ${chambers(count)} goes to ${cc(targetCc)}`
  if (out.length === 0) return `${goes}; each lands within ${cc(toleranceCc)} of it.`
  return `${goes}, but cutting alone cannot bring each within ${cc(toleranceCc)} of it. ${remedy(input, targetCc)}`
}

const chambers = (count: number): string => (count === 1 ? '1 chamber' : `${count} chambers`)

function openWords(out: readonly OutOfTolerance[]): string {
  if (out.length === 0) return 'the rest land within tolerance.'
  const each = out.map(({ tag, chamber, overCc }) => `chamber ${chamber} of ${tag} by ${cc(-overCc)}`)
  return `then open ${each.join(', ')}.`
}

function remedy(input: PlanInput, targetCc: number): string {
  if (input.thouPerCc === null) return 'Equalise them.'
  const takeCc = Math.max(...allChambers(input)) - (targetCc - input.seatWorkGivesCc)
  const depth = formatThou((takeCc * input.thouPerCc) / 1000)
  return `To equalise them: cut until the largest is there, ${depth} at the chamber’s centre, then open the rest.`
}

/** Chambers that the cut leaves uneven, when nothing is done about it. */
export function unevenCaution(
  { targetCc, toleranceCc, equalise }: PlanInput,
  out: readonly OutOfTolerance[],
): CutCaution[] {
  if (out.length === 0 || equalise || targetCc === null) return []
  const chambers = out.map(({ tag, chamber, finishedCc }) => ({ tag, chamber, finishedCc }))
  return [{ code: 'uneven', targetCc, toleranceCc, chambers }]
}
