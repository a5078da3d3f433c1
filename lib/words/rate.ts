import type { JudgedCut, Ruling } from '../core/rate/screen'

export type CutSaid = {
  readonly verdict: JudgedCut['verdict']
  readonly whyNot: string
  readonly ruling: Ruling | null
  readonly rulingReason: string
  readonly tookCc: number | null
  readonly expectedCc: number | null
  readonly doubted: boolean
}

const cc = (value: number): string => `${value.toFixed(1)} cc`

/** The same of one head's cut, where the other cuts are not at hand; '' when it simply counts. */
export function headCutWords(
  cut: Pick<CutSaid, 'whyNot' | 'ruling' | 'rulingReason'> & { questioned: boolean },
): string {
  const { ruling, rulingReason, questioned, whyNot } = cut
  if (ruling === 'leave-out') return `The owner left this cut out of the rate: ${rulingReason}`
  if (ruling === 'count') return `The owner counts this cut behind the rate: ${rulingReason}`
  if (questioned) {
    return 'This cut disagrees with the other cuts of its casting and is left out of the rate until answered. Read again, correct the wrong figure, or count it.'
  }
  return whyNot === '' ? '' : `This cut teaches no rate: ${whyNot}.`
}

/** Why a cut is not behind the rate, or that the owner counts it; '' when there is nothing to say. */
export function cutWords(cut: CutSaid): string {
  const { verdict, whyNot, ruling, rulingReason, tookCc, expectedCc, doubted } = cut
  if (verdict === 'left-out') return `left out by the owner: ${rulingReason}`
  if (ruling === 'count') return `counted by the owner: ${rulingReason}`
  if (verdict === 'not-like-for-like') return whyNot
  if (verdict === 'counted' || tookCc === null || expectedCc === null) {
    return verdict === 'counted' && doubted ? 'the record is in doubt: all its cuts count' : ''
  }
  return `left out until answered: it took ${cc(tookCc)}, about ${cc(expectedCc)} was expected. Read again, correct the wrong figure, or count it`
}
