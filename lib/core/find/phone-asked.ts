/** Figures, and what people part them by. */
const phoneLike = /^\+?[\d\s().-]+$/
const fewestFigures = 3

/**
 * The figures that a telephone number may be kept by, when what is asked for looks like one: as typed, without a leading
 * 0 or 00, and without the shop's own country code. Null: it does not look like a number.
 * Derived: a number is kept as typed and as +15550104477; the shortest form asked for is in both.
 * Example: "+1 555 0139", country code "1" → ["15550139", "5550139"].
 */
export function phoneFigures(asked: string, countryCode: string): string[] | null {
  const text = asked.trim()
  const figures = text.replace(/\D/g, '')
  if (!phoneLike.test(text) || figures.length < fewestFigures) return null
  const isAbroad = text.startsWith('+') || figures.startsWith('00')
  const bare = figures.replace(/^0+/, '')
  const home = isAbroad && countryCode !== '' && bare.startsWith(countryCode) ? bare.slice(countryCode.length) : bare
  return [...new Set([figures, bare, home.replace(/^0+/, '')])].filter((form) => form.length >= fewestFigures)
}
