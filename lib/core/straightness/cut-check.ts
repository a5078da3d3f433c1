import type { PlaneFit } from './plane-fit'
import type { VendorMarks } from './vendor-marks'
import { degrees } from '../units/degrees'

/** Depths in inches; what was wanted or marked may be unknown. */
export type CutParts = {
  readonly flatIn: number | null
  readonly angleIn: number | null
  readonly angleDeg: number | null
}

export type Against = { readonly value: number; readonly off: number; readonly within: boolean }

export type CutCheckRow = {
  readonly part: 'flat' | 'angle' | 'degrees' | 'taper' | 'worst'
  readonly measured: number
  /** Measured less wanted; null: nothing was wanted of it, or it is not known. */
  readonly wanted: Against | null
  readonly marked: Against | null
  /** Of the point that lies farthest off the plane. */
  readonly point: string
}

export type CutCheckInput = {
  readonly measured: Pick<PlaneFit, 'flatIn' | 'angleIn'> & Partial<Pick<PlaneFit, 'angleDeg' | 'taperIn' | 'residual'>>
  readonly wanted: CutParts
  readonly marks: VendorMarks | null
  readonly toleranceIn: number
  readonly milledWidthIn: number | null
}

/**
 * What a cut really took, beside what was wanted of it and what its maker marked on it.
 *
 * @param measured from `planeFit`, or read at both edges: then taper and residual are not known
 * @param wanted, marks depths 0–0.5 in, degrees 0–5
 * @param toleranceIn how far a depth may be off, in inches (shop setting, default 0.002 [common practice])
 * @param milledWidthIn over which the tolerance is a tolerance of the angle: atan(tolerance/width); null: not known
 * @returns one row a part, in the order a machinist says them; a row is within when |off| ≤ tolerance
 *
 * Taper along the head and the worst point off the plane are wanted to be nothing.
 * Example: 0.0205 flat where 0.020 was wanted, tolerance 0.002 → off 0.0005, within.
 */
export function cutCheck({ measured, wanted, marks, toleranceIn, milledWidthIn }: CutCheckInput): CutCheckRow[] {
  const toleranceDeg = milledWidthIn === null ? null : degrees(Math.atan(toleranceIn / milledWidthIn))
  const { residual } = measured
  const rows: readonly [CutCheckRow['part'], number | undefined, number | null, number | null, number | null][] = [
    ['flat', measured.flatIn, wanted.flatIn, marks?.flatIn ?? null, toleranceIn],
    ['angle', measured.angleIn, wanted.angleIn, marks?.angleIn ?? null, toleranceIn],
    ['degrees', measured.angleDeg, wanted.angleDeg, marks?.angleDeg ?? null, toleranceDeg],
    ['taper', measured.taperIn, 0, null, toleranceIn],
    ['worst', residual?.worstIn, 0, null, toleranceIn],
  ]
  return rows.flatMap(([part, value, want, mark, tolerance]) =>
    value === undefined
      ? []
      : [
          {
            part,
            measured: value,
            wanted: against(value, want, tolerance),
            marked: against(value, mark, tolerance),
            point: part === 'worst' ? (residual?.worstPoint ?? '') : '',
          },
        ],
  )
}

function against(value: number, to: number | null, tolerance: number | null): Against | null {
  if (to === null || tolerance === null) return null
  const off = value - to
  // The tiny addition keeps 0.022 − 0.020 from missing a tolerance of 0.002.
  return { value: to, off, within: Math.abs(off) <= tolerance + 1e-9 }
}
