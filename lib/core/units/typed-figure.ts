/**
 * A recorded figure with its unit, as it was typed: "18 thou" stays, "0.3410" in inches becomes "0.3410 in". Trailing
 * zeros are kept: 0.3410 says more to a machinist than 0.341.
 */
export function typedFigure({ text, unit }: { readonly text: string; readonly unit: string }): string {
  const namesItsUnit = /[\p{L}°"″”']/u.test(text)
  if (namesItsUnit || unit === '' || text === '') return text
  return unit === '°' ? `${text}°` : `${text} ${unit}`
}
