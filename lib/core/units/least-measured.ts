/** A shop measures to half a thou: a depth or a lean under it is the scatter of its gauges, in inches [common practice]. */
export const leastMeasuredIn = 0.0005

/**
 * Whether a length is large enough for a shop to measure, either way.
 *
 * Common practice. Example: 0.0001 → no; 0.0153 → yes.
 */
export const isMeasurable = (lengthIn: number): boolean => Math.abs(lengthIn) >= leastMeasuredIn - 1e-9
