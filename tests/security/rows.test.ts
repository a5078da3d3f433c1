import { readdirSync, readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

const folder = 'tests/security'
const files = ['tests', 'e2e'].flatMap((root) =>
  readdirSync(root, { recursive: true, encoding: 'utf8' }).map((file) => `${root}/${file}`),
)
/** A test is named by its path, or by the end of it. */
const isThere = (named: string): boolean => files.some((file) => file === named || file.endsWith(`/${named}`))

const pages = readdirSync(folder).filter((file) => file.endsWith('.md'))

/** Number and level stand first in a row, the state and the test last. */
const rows = pages.flatMap((page) =>
  readFileSync(`${folder}/${page}`, 'utf8')
    .split('\n')
    .filter((line) => /^\| \d+\.\d+\.\d+ /.test(line))
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map(([, number = '', ...rest]) => ({ page, number, cells: rest, tests: rest.at(-2) ?? '' })),
)

it('every test that a row names is there, and a row without one says so', () => {
  expect(rows.length).toBeGreaterThan(100)
  const named = rows.flatMap(({ number, tests }) =>
    [...tests.matchAll(/`([^`]+\.ts)`/g)].map(([, file = '']) => ({ number, file })),
  )
  expect(named.length).toBeGreaterThan(60)
  expect(named.filter(({ file }) => !isThere(file))).toEqual([])
  const without = rows.filter(({ page, tests }) => page === 'README.md' && !tests.includes('`') && tests !== 'read')
  expect(without.map(({ number }) => number)).toEqual([])
})

it('a requirement stands in one row', () => {
  const numbers = rows.map(({ number }) => number)
  expect(numbers.filter((number, at) => numbers.indexOf(number) !== at)).toEqual([])
})
