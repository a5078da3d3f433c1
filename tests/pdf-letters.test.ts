import { PDFDocument } from 'pdf-lib'
import { expect, it } from 'vitest'
import { openFonts, type Face } from '@/lib/pdf/fonts'
import { readPdf } from './pdf/read-pdf'

// Fonts are kept from paper to paper, so these need a process that has printed nothing yet: they stand alone.

async function printed(words: string, face: Face): Promise<string> {
  const doc = await PDFDocument.create()
  const fonts = await openFonts(doc)
  const page = doc.addPage([400, 100])
  for (const { text, font } of fonts.runs(words, face)) page.drawText(text, { x: 10, y: 50, size: 12, font })
  await fonts.embed()
  return (await readPdf(await doc.save())).text
}

it.each([
  ['±', '+1.4', 'figure'],
  ['É', 'E', 'text-bold'],
  ['ñ', 'n', 'text'],
] as const)('%s on one paper, then %s on the next: a reader of the file finds both', async (whole, part, face) => {
  expect(await printed(whole, face)).toBe(whole)
  expect(await printed(part, face)).toBe(part)
})
