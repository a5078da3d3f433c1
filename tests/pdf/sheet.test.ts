import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { expect, it } from 'vitest'
import { drawWords } from '@/lib/pdf/canvas'
import { addPage, closeFile, openFile } from '@/lib/pdf/paper-file'
import { setting } from './sample-papers'

type Shown = { readonly words: string; readonly font: string; readonly sizeMm: number; readonly colour: string }

/** The words of the first page, and how a reader of the file sets them: what a part changed ends with that part. */
async function shownIn(bytes: Uint8Array): Promise<Shown[]> {
  const doc = await getDocument({ data: bytes.slice(), verbosity: 0, disableFontFace: true }).promise
  const { fnArray, argsArray } = await (await doc.getPage(1)).getOperatorList()
  await doc.destroy()
  const kept: Omit<Shown, 'words'>[] = []
  let state = { font: '', sizeMm: 0, colour: '' }
  const shown: Shown[] = []
  fnArray.forEach((fn: number, i: number) => {
    const args = (argsArray[i] ?? []) as unknown[]
    if (fn === OPS.save) kept.push(state)
    else if (fn === OPS.restore) state = kept.pop() ?? state
    else if (fn === OPS.setFont) state = { ...state, font: String(args[0]), sizeMm: (Number(args[1]) / 72) * 25.4 }
    else if (fn === OPS.setFillRGBColor) state = { ...state, colour: args.join() }
    else if (fn === OPS.showText) shown.push({ ...state, words: wordsOf(args[0] as unknown[]) })
  })
  return shown
}

const wordsOf = (glyphs: readonly unknown[]): string =>
  glyphs
    .map((glyph) => (glyph !== null && typeof glyph === 'object' ? String(Reflect.get(glyph, 'unicode')) : ''))
    .join('')

it('words after a part that is drawn smaller, or after a drawing, are set as they are asked for', async () => {
  const file = openFile({ title: 'Sheet', shopName: '', language: 'en', setting })
  const canvas = addPage(file, 100, 60)
  const plain = { face: 'text', sizeMm: 5 } as const
  const loud = { face: 'figure-bold', sizeMm: 4, tone: 'stop' } as const
  drawWords(canvas, 'before', 10, 10, plain)
  canvas.page.scaled(0.8, [10, 20], ([x, y]) => drawWords(canvas, 'within', x, y, loud))
  drawWords(canvas, 'like it', 10, 25, loud)
  drawWords(canvas, 'after', 10, 30, plain)
  const mark = { kind: 'path', d: 'M0 0L5 0L5 5Z', fill: 'brass', stroke: null } as const
  canvas.page.path(mark, [10, 40], 1)
  drawWords(canvas, 'last', 10, 50, plain)
  const shown = await shownIn(await closeFile(file))
  expect(shown.map(({ words }) => words)).toEqual(['before', 'within', 'like it', 'after', 'last'])
  const [before, within, like, after, last] = shown.map(({ words: _, ...how }) => how)
  expect(before?.sizeMm).toBeCloseTo(5, 3)
  expect(within?.sizeMm).toBeCloseTo(4, 3)
  expect(within?.font).not.toBe(before?.font)
  expect(within?.colour).not.toBe(before?.colour)
  expect(like).toEqual(within)
  expect([after, last]).toEqual([before, before])
})
