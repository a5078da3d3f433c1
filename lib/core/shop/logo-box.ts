/** The room that the shop's logo has at the head of a paper, beside name and address: it costs a paper no line. */
export const logoBox = { widthMm: 40, heightMm: 13 } as const

const dotsPerInch = 600

/** As many pixels as a good printer sets in that room: more would be carried by every paper and seen on none. */
export const logoPixels = {
  widthPx: Math.round((logoBox.widthMm / 25.4) * dotsPerInch),
  heightPx: Math.round((logoBox.heightMm / 25.4) * dotsPerInch),
} as const

export type LogoSize = { readonly widthMm: number; readonly heightMm: number }

/**
 * How large a logo prints: as high as the room, or as wide where it is wider, in its own proportions.
 *
 * @param widthPx pixels, 1 or more
 * @param heightPx pixels, 1 or more
 * @example fitLogo(300, 300) → 13 × 13 mm; fitLogo(800, 100) → 40 × 5 mm
 */
export function fitLogo(widthPx: number, heightPx: number): LogoSize {
  const mmPerPx = Math.min(logoBox.widthMm / widthPx, logoBox.heightMm / heightPx)
  return { widthMm: widthPx * mmPerPx, heightMm: heightPx * mmPerPx }
}

/** The same on a screen, in the 96 pixels an inch that a page is laid out in; a hair of a line is still one pixel. */
export function logoOnScreen(widthPx: number, heightPx: number): { readonly width: number; readonly height: number } {
  const { widthMm, heightMm } = fitLogo(widthPx, heightPx)
  const pixels = (mm: number): number => Math.max(1, Math.round((mm / 25.4) * 96))
  return { width: pixels(widthMm), height: pixels(heightMm) }
}
