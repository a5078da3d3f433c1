/** Degrees into radians: deg·π/180. Example: 180 → π. */
export const radians = (deg: number): number => (deg * Math.PI) / 180

/** Radians into degrees: rad·180/π. Example: π → 180. */
export const degrees = (rad: number): number => (rad * 180) / Math.PI
