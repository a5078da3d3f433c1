/** How far inside the deck's edges the gauge touches, in inches, in plan: from the long edges and from the ends. */
export type CornerInset = { readonly edgeIn: number; readonly endIn: number }

type OfRecord = {
  readonly cornerInsetEdgeIn?: number | undefined
  readonly cornerInsetEndIn?: number | undefined
}

/**
 * Where the corners of a head are touched, in inches: by the casting's record, else by the shop's setting.
 *
 * @param record each 0–3 in; a record with one of the two alone says nothing, since half a place is none
 * @param shop null until somebody has answered
 * @returns null: nobody has said, and the figure is not guessed
 *
 * By definition: the record comes before the shop's setting. Example: record 0.5 and 0.75, shop 0.4 and 0.4 → 0.5 and
 * 0.75.
 */
export function cornerInsetOf(record: OfRecord, shop: CornerInset | null): CornerInset | null {
  const { cornerInsetEdgeIn: edgeIn, cornerInsetEndIn: endIn } = record
  return edgeIn === undefined || endIn === undefined ? shop : { edgeIn, endIn }
}
