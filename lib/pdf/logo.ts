import { PDFRawStream, type PDFContext, type PDFRef } from 'pdf-lib'
import { fitLogo } from '@/lib/core/shop/logo-box'
import type { ShopBlock } from '@/lib/core/spec/spec-sheet'
import { beside, gap, paragraph, within, type Paper } from './layout'
import { packedRows } from './png'

const gapMm = 4
/** The top of a capital letter stands so far below the top of its line. */
const belowLineMm = 1

/** What the shop says of itself, beside its logo; over the whole width where it has none. */
export function besideLogo(paper: Paper, { logo }: ShopBlock, words: (part: Paper) => void): void {
  const { logo: bytes } = paper.file.heading.setting
  if (!logo || !bytes) return words(paper)
  const { widthMm, heightMm } = fitLogo(logo.widthPx, logo.heightPx)
  const { left, right } = paper
  beside(paper, [
    () => {
      place(paper, bytes, widthMm, heightMm)
      gap(paper, belowLineMm + heightMm)
    },
    () => within(paper, left + widthMm + gapMm, right, words),
  ])
}

/** Logo, name, address and telephone, and a line more where a paper has one. */
export const shopWords = (paper: Paper, shop: ShopBlock, last = ''): void =>
  besideLogo(paper, shop, (part) => {
    paragraph(part, shop.name, { face: 'text-bold', sizeMm: 5 })
    for (const line of [...shop.lines, last]) paragraph(part, line)
  })

/** Left, where the paper goes on. */
function place({ canvas, left, y }: Paper, bytes: Uint8Array, widthMm: number, heightMm: number): void {
  const picture = { name: 'ShopLogo', embed: (context: PDFContext) => embedded(context, bytes) }
  canvas.page.picture(picture, [left, y + belowLineMm], widthMm, heightMm)
}

/**
 * The rows as the PNG has them packed: a reader of PDF unpacks the same code. To unpack and pack them here, as the library
 * does, would take longer than the rest of the paper.
 */
function embedded(context: PDFContext, bytes: Uint8Array): PDFRef {
  const { packed, widthPx, heightPx } = packedRows(bytes)
  const dictionary = context.obj({
    Type: 'XObject',
    Subtype: 'Image',
    Width: widthPx,
    Height: heightPx,
    ColorSpace: 'DeviceRGB',
    BitsPerComponent: 8,
    Filter: 'FlateDecode',
    DecodeParms: { Predictor: 15, Colors: 3, BitsPerComponent: 8, Columns: widthPx },
    Length: packed.length,
  })
  return context.register(PDFRawStream.of(dictionary, packed))
}
