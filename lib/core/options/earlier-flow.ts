/** What one of the shop's own cuts did to flow: mean over the common span of lift, like for like, in per cent. */
export type EarlierFlow = {
  readonly tag: string
  readonly jobNumber: string
  /** At the deepest, as measured. */
  readonly deepestIn: number
  /** Null: that port was not run before and after, or not like for like. */
  readonly intakePercent: number | null
  readonly exhaustPercent: number | null
  /** The run after was taken right after the cut: nothing but the cut lies between. */
  readonly cutAlone: boolean
}

/**
 * Those of the shop's own cuts that are of the size asked: between half and twice the depth, nearest first.
 *
 * @param deepestIn of the cut asked, 0–1 in; @param most how many are shown at the most
 *
 * Example: 0.040 asked → 0.035 and 0.070 count, 0.015 does not.
 */
export function flowOfCutsLike(earlier: readonly EarlierFlow[], deepestIn: number, most = 5): readonly EarlierFlow[] {
  const off = (cut: EarlierFlow): number => Math.abs(cut.deepestIn - deepestIn)
  return earlier
    .filter((cut) => cut.deepestIn >= deepestIn / 2 && cut.deepestIn <= deepestIn * 2)
    .toSorted((a, b) => off(a) - off(b))
    .slice(0, most)
}

/** "20 thou, T-0412: intake +1.2 %, exhaust −0.4 %, the cut alone". */
export function earlierFlowWords({ deepestIn, tag, intakePercent, exhaustPercent, cutAlone }: EarlierFlow): string {
  const said = [
    intakePercent === null ? '' : `intake ${signed(intakePercent)}`,
    exhaustPercent === null ? '' : `exhaust ${signed(exhaustPercent)}`,
    cutAlone ? 'the cut alone' : 'with all the work of that visit',
  ]
  return `${(deepestIn * 1000).toFixed(0)} thou, ${tag}: ${said.filter(Boolean).join(', ')}`
}

const signed = (percent: number): string => {
  const text = Math.abs(percent).toFixed(1)
  return `${percent < 0 && text !== '0.0' ? '−' : '+'}${text} %`
}
