import { expect, it } from 'vitest'
import { drawWords } from '@/lib/pdf/canvas'
import type { Face } from '@/lib/pdf/fonts'
import { addPage, closeFile, openFile } from '@/lib/pdf/paper-file'
import { readPdf } from './pdf/read-pdf'
import { setting } from './pdf/sample-papers'

// Fonts are kept from paper to paper, so these need a process that has printed nothing yet: they stand alone.

async function printed(words: string, face: Face): Promise<string> {
  const file = openFile({ title: 'Letters', shopName: '', language: 'en', setting })
  drawWords(addPage(file, 100, 40), words, 5, 20, { face, sizeMm: 5 })
  return (await readPdf(await closeFile(file))).text
}

it.each([
  ['±', '+1.4', 'figure'],
  ['É', 'E', 'text-bold'],
  ['ñ', 'n', 'text'],
] as const)('%s on one paper, then %s on the next: a reader of the file finds both', async (whole, part, face) => {
  expect(await printed(whole, face)).toBe(whole)
  expect(await printed(part, face)).toBe(part)
})
