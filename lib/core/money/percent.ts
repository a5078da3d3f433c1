/** Hundredths of a per cent in words: 825 → "8.25 %", 1000 → "10 %", 0 → "none". */
export function percentOf(basisPoints: number): string {
  if (basisPoints === 0) return 'none'
  const rest = String(basisPoints % 100).padStart(2, '0')
  const decimals = rest === '00' ? '' : `.${rest.replace(/0$/, '')}`
  return `${Math.floor(basisPoints / 100)}${decimals} %`
}

/** Hundredths of a per cent as they are typed: 825 → "8.25", 0 → "". The inverse of `taxPercent`. */
export const taxText = (basisPoints: number): string =>
  basisPoints === 0 ? '' : percentOf(basisPoints).replace(' %', '')
