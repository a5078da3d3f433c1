import type { ExpectedLimits } from '../expected/limits'
import type { WantedGroup } from './figures'

/** The tolerances of the shop that wanted figures are held to. */
export type WantedTolerances = Pick<
  ExpectedLimits,
  | 'seatWidthToleranceIn'
  | 'guideClearanceToleranceIn'
  | 'insertPressToleranceIn'
  | 'recessionToleranceIn'
  | 'stemHeightToleranceIn'
  | 'installedHeightToleranceIn'
  | 'coilBindToleranceIn'
  | 'springPressureTolerancePart'
>

const inches: Readonly<Partial<Record<WantedGroup, keyof WantedTolerances>>> = {
  'seat-width': 'seatWidthToleranceIn',
  'guide-clearance': 'guideClearanceToleranceIn',
  'insert-press': 'insertPressToleranceIn',
  recession: 'recessionToleranceIn',
  'stem-height': 'stemHeightToleranceIn',
  'installed-height': 'installedHeightToleranceIn',
  'coil-bind': 'coilBindToleranceIn',
}

/**
 * How far a reading may lie from a wanted figure and still be right, in the unit of the figure.
 *
 * @returns null where the shop has no tolerance for it
 *
 * By definition: the shop's setting; of a pressure its part of the figure.
 * Example: 130 lbf on the seat, 10 % → 13 lbf.
 */
export function toleranceOf(group: WantedGroup, value: number, shop: WantedTolerances): number | null {
  if (group === 'seat-pressure' || group === 'open-pressure') return shop.springPressureTolerancePart * Math.abs(value)
  const key = inches[group]
  return key ? shop[key] : null
}
