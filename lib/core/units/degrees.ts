/**
 * Degrees into radians: deg·π/180. Example: 180 → π.
 * By definition: a full turn is 360° and 2π.
 */
export const radians = (deg: number): number => (deg * Math.PI) / 180

/**
 * Radians into degrees: rad·180/π. Example: π → 180.
 * By definition: a full turn is 360° and 2π.
 */
export const degrees = (rad: number): number => (rad * 180) / Math.PI
