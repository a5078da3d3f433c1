import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitLogo, logoBox, logoOnScreen, logoPixels } from '@/lib/core/shop/logo-box'

describe('how large a logo prints', () => {
  it.each([
    ['a square is as high as the room', 300, 300, 13, 13],
    ['one that is wider than the room is as wide as it', 800, 100, 40, 5],
    ['one that is tall keeps its height', 100, 800, 1.625, 13],
    ['a small one is set as large as a large one', 40, 13, 40, 13],
  ])('%s', (_what, widthPx, heightPx, widthMm, heightMm) => {
    expect(fitLogo(widthPx, heightPx).widthMm).toBeCloseTo(widthMm, 10)
    expect(fitLogo(widthPx, heightPx).heightMm).toBeCloseTo(heightMm, 10)
  })

  it('is never larger than its room, touches it on one side, and keeps its proportions', () => {
    const edge = fc.integer({ min: 1, max: 10_000 })
    fc.assert(
      fc.property(edge, edge, (widthPx, heightPx) => {
        const { widthMm, heightMm } = fitLogo(widthPx, heightPx)
        expect(widthMm).toBeLessThanOrEqual(logoBox.widthMm + 1e-9)
        expect(heightMm).toBeLessThanOrEqual(logoBox.heightMm + 1e-9)
        expect(Math.max(widthMm / logoBox.widthMm, heightMm / logoBox.heightMm)).toBeCloseTo(1, 9)
        expect(widthMm * heightPx).toBeCloseTo(heightMm * widthPx, 4)
      }),
    )
  })

  it('is kept with the pixels of 600 dots an inch, and shown with those of 96', () => {
    // 40 mm and 13 mm are 1.5748 in and 0.5118 in.
    expect(logoPixels).toEqual({ widthPx: 945, heightPx: 307 })
    expect(logoOnScreen(40, 13)).toEqual({ width: 151, height: 49 })
    expect(logoOnScreen(9000, 1)).toEqual({ width: 151, height: 1 })
  })
})
