import { PDFDocument, PDFName, PDFString, type PDFRef } from 'pdf-lib'
import type { Canvas } from './canvas'
import { embedFace } from './embed-face'
import type { FontName } from './faces'
import { openFonts, type Fonts } from './fonts'
import { packedStream } from './packed-stream'
import type { PrintSetting } from './print-setting'
import { pointsPerMm, Sheet } from './sheet'

export type Heading = {
  readonly title: string
  readonly shopName: string
  readonly language: string
  readonly setting: PrintSetting
}

/** A paper's pages while they are written, and what they share. */
export type PaperFile = {
  readonly heading: Heading
  readonly fonts: Fonts
  readonly pages: Canvas[]
}

export const openFile = (heading: Heading): PaperFile => ({ heading, fonts: openFonts(), pages: [] })

export function addPage({ fonts, pages }: PaperFile, widthMm: number, heightMm: number): Canvas {
  const canvas = { page: new Sheet(widthMm, heightMm), fonts }
  pages.push(canvas)
  return canvas
}

/** Writes pages and fonts into a file, and tells of letters that none of the fonts has. */
export async function closeFile({ heading, fonts, pages }: PaperFile): Promise<Uint8Array> {
  const missing = fonts.missing()
  if (missing.length > 0) heading.setting.onMissing?.(heading.title, missing)
  const doc = await PDFDocument.create()
  describe(doc, heading)
  const embedded = Array.from(fonts.used(), ([name, glyphs]) => [name, embedFace(doc.context, name, glyphs)] as const)
  for (const { page } of pages) writePage(doc, page, embedded)
  // The library would rest between every fifty of the few parts there are.
  return doc.save({ objectsPerTick: Infinity })
}

/** Title, author and language: what a reader or a screen reader says about the file. */
function describe(doc: PDFDocument, { title, shopName, language, setting }: Heading): void {
  doc.setTitle(title, { showInWindowTitleBar: true })
  doc.setAuthor(shopName)
  doc.setSubject(title)
  doc.setProducer('Brasstag')
  doc.setCreator('Brasstag')
  doc.setCreationDate(setting.now)
  doc.setModificationDate(setting.now)
  doc.catalog.set(PDFName.of('Lang'), PDFString.of(language))
}

function writePage(doc: PDFDocument, sheet: Sheet, fonts: readonly (readonly [FontName, PDFRef])[]): void {
  const { node } = doc.addPage([sheet.widthMm * pointsPerMm, sheet.heightMm * pointsPerMm])
  const content = packedStream(doc.context, Buffer.from(sheet.content, 'latin1'))
  node.set(PDFName.of('Contents'), doc.context.register(content))
  for (const [name, font] of fonts) node.setFontDictionary(PDFName.of(name), font)
  for (const { name, embed } of sheet.pictures) node.setXObject(PDFName.of(name), embed(doc.context))
}
