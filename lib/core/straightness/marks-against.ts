import type { VendorMarks } from './vendor-marks'

export type MarksAgainst = {
  /** Farthest that one of the parts is off, in inches; null: the marks say nothing that was measured. */
  readonly offIn: number | null
  readonly agrees: boolean
}

/**
 * How far one reading of a vendor's marks is from what the corners say was cut, in inches.
 *
 * @param marks depths 0–0.5 in
 * @param measured flat part and angle part by the corners
 * @param toleranceIn how far a depth may be off, 0–0.1 in
 * @returns the farthest of flat part, angle part and depth at the deep edge, each where the marks say it
 *
 * Derived: the difference of each part. Example: marked 20 and 83, measured 20 and 63 → off 0.020; marked 20 and all of
 * 83 at the edge → off 0.
 */
export function marksAgainst(
  marks: Pick<VendorMarks, 'flatIn' | 'angleIn' | 'deepIn'>,
  measured: { readonly flatIn: number; readonly angleIn: number },
  toleranceIn: number,
): MarksAgainst {
  const offs = [
    [marks.flatIn, measured.flatIn],
    [marks.angleIn, measured.angleIn],
    [marks.deepIn, measured.flatIn + measured.angleIn],
  ].flatMap(([said, found]) => (typeof said === 'number' && typeof found === 'number' ? [Math.abs(said - found)] : []))
  if (offs.length === 0) return { offIn: null, agrees: false }
  const offIn = Math.max(...offs)
  // The tiny addition keeps 0.022 − 0.020 from missing a tolerance of 0.002.
  return { offIn, agrees: offIn <= toleranceIn + 1e-9 }
}
