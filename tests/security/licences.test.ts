import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { asking, licencesPage, licencesPath, licensed, permissive } from './licences'

it('the page of licences is the one that the lock file makes: `npm run licences`', () => {
  expect(readFileSync(licencesPath, 'utf8')).toBe(licencesPage())
})

it('every package that a running shop installs has a licence that it may be used under', () => {
  const all = licensed()
  expect(all.length).toBeGreaterThan(200)
  const known = new Set([...permissive, ...Object.keys(asking)])
  expect(all.filter(({ licence }) => !known.has(licence)).map(({ name, licence }) => `${name}: ${licence}`)).toEqual([])
})
