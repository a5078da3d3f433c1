import { afterEach, beforeEach, expect, vi } from 'vitest'

// An error that nobody looks at is how a broken thing stays green: a test that expects one says so by taking it with
// `expectedErrors`.
const seen: unknown[][] = []

beforeEach(() => {
  seen.length = 0
  vi.spyOn(console, 'error').mockImplementation((...words: unknown[]) => {
    seen.push(words)
  })
})

afterEach(() => {
  vi.restoreAllMocks()
  expect(seen, 'console.error was called').toEqual([])
})

/** The errors printed so far in this test, taken: they no longer fail it. */
export const expectedErrors = (): unknown[][] => seen.splice(0)
