/** A round step (1, 2 or 5 times a power of ten) that cuts a span into about as many parts as asked. */
export function roundStep(span: number, parts: number): number {
  if (!(span > 0)) return 1
  const rough = span / parts
  const power = 10 ** Math.floor(Math.log10(rough))
  const lead = rough / power
  const round = lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10
  return round * power
}

/** Multiples of the step from zero up to the first one that is not below `top`. */
export function ticks(top: number, parts: number): number[] {
  const step = roundStep(top, parts)
  const count = Math.max(1, Math.ceil(top / step - 1e-9))
  return Array.from({ length: count + 1 }, (_, i) => i * step)
}
