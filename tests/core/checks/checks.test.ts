import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { oursOf } from './check'
import { sections } from './sections'
import { checksPage, tablePath } from './table'

describe.each(sections)('$title', ({ checks }) => {
  it.each(checks)('$quantity ($source)', (check) => {
    const ours = oursOf(check)
    // Said in figures, so that a failure shows both; and a figure that is none fails.
    expect(Math.abs(ours - check.printed), `${ours} is not ${check.printed}`).toBeLessThanOrEqual(check.tolerance)
  })
})

const all = sections.flatMap(({ checks }) => checks)

it('stands on a hundred and fifty figures from outside, or more', () => {
  expect(all.length).toBeGreaterThanOrEqual(150)
})

it('names a source for each, and none of them is the core', () => {
  for (const { quantity, source, printed, tolerance } of all) {
    expect(source, quantity).toMatch(/\w{4}/)
    expect(Number.isFinite(printed), quantity).toBe(true)
    expect(tolerance, quantity).toBeGreaterThanOrEqual(0)
    // A tolerance as wide as the figure would pass anything.
    if (printed !== 0) expect(tolerance, quantity).toBeLessThan(Math.abs(printed) * 0.05)
  }
})

it('the page of checks is up to date: npm run checks', async () => {
  expect(readFileSync(tablePath, 'utf8')).toBe(await checksPage())
})
