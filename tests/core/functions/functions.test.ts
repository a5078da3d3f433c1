import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { functionsOf, listed } from './documented'
import { firstSentence, functionsPage, pagePath } from './page'

it('the list of functions is the one that their comments make: `npm run functions`', async () => {
  expect(readFileSync(pagePath, 'utf8')).toBe(await functionsPage())
})

it('every function has a sentence', () => {
  const functions = listed.flatMap(functionsOf)
  expect(functions.length).toBeGreaterThan(150)
  expect(functions.filter(({ comment }) => firstSentence(comment).length < 5)).toEqual([])
})
