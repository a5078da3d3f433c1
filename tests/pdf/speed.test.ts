import { describe, expect, it } from 'vitest'
import { byPdfkit, contentOf, papers } from '@/tests/bench/papers'
import { readPdf } from './read-pdf'

/** How long each takes is measured by `npm run bench`. */
describe('the time a paper takes', () => {
  it.each(Object.entries(papers))(
    'is measured against the same content, every word, on as many pages: %s',
    async (_, write) => {
      const ours = await readPdf(await write())
      const theirs = await readPdf((await byPdfkit(await contentOf(write))).bytes)
      const words = (pages: readonly string[]) => pages.map((page) => page.split(/\s+/).filter(Boolean).sort())
      expect(ours.pages.length).toBeGreaterThan(0)
      expect(words(theirs.pages)).toEqual(words(ours.pages))
      expect(theirs.sizes).toEqual(ours.sizes)
    },
  )
})
