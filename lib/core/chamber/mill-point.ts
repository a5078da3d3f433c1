/** When a chamber is read at the mill: before the first pass, at a stop on the way, at size. */
export type MillStop = 'before' | 'at-stop' | 'at-size'

export const millStops: readonly MillStop[] = ['before', 'at-stop', 'at-size']

/** The chamber that is read at the mill while nothing says another one. */
export const stopChamber = '1'

/** Where a chamber is read at the mill: "at-stop" is chamber 1, as it always was, "at-stop-3" chamber 3. */
export const millPoint = (stop: MillStop, chamber: string): string =>
  chamber === stopChamber ? stop : `${stop}-${chamber}`

/** Whether a point is one of a stop at the mill. */
export const isMillPoint = (point: string, stop: MillStop): boolean => point === stop || point.startsWith(`${stop}-`)

/**
 * The chamber of a cc reading by its point, as a number from the marked end.
 *
 * Example: "at-stop-3" → 3; "at-size" → 1; "2" → 2. Derived: the names that `millPoint` gives.
 */
export function chamberOfPoint(point: string): string {
  for (const stop of millStops) {
    if (isMillPoint(point, stop)) return point === stop ? stopChamber : point.slice(stop.length + 1)
  }
  return point
}
