import { describe, expect, it } from 'vitest'
import { byPdfkit, contentOf, measured } from '@/tests/bench/spec-sheet'
import { specSheet } from '@/lib/pdf/spec-sheet'
import { readPdf } from './read-pdf'
import { setting } from './sample-papers'

/** How long each takes is measured by `npm run bench`. */
describe('the time a spec sheet takes', () => {
  it('is measured against the same content: every word, on as many pages', async () => {
    const ours = await readPdf(await specSheet(measured, setting))
    const theirs = await readPdf((await byPdfkit(await contentOf(measured))).bytes)
    const words = (pages: readonly string[]) => pages.map((page) => page.split(/\s+/).filter(Boolean).sort())
    expect(ours.pages).toHaveLength(2)
    expect(words(theirs.pages)).toEqual(words(ours.pages))
    expect(theirs.sizes).toEqual(ours.sizes)
  })
})
