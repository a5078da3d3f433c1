import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { scripts } from '../package.json'

const root = join(import.meta.dirname, '..')

/** What a test file takes of the tests, itself and what it imports from beside it. */
const drawsAtRandom = (file: string): boolean => {
  const text = readFileSync(join(root, file), 'utf8')
  if (/^(?:import .*|\}) from 'fast-check'$/m.test(text)) return true
  const beside = [...text.matchAll(/from '\.\/([\w/-]+)'/g)].map(([, name]) => join(file, '..', `${name}.ts`))
  return beside.some((other) => existsSync(join(root, other)) && drawsAtRandom(other))
}

it('the long run has every test file that draws at random', () => {
  const places = scripts['test:long'].split(' ').filter((word) => word.startsWith('tests/'))
  const files = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
    .map((file) => `tests/${file.replaceAll('\\', '/')}`)
    .filter((file) => /\.test\.tsx?$/.test(file))
  const random = files.filter(drawsAtRandom)
  expect(random.length).toBeGreaterThan(30)
  expect(random.filter((file) => !places.some((place) => file === place || file.startsWith(`${place}/`)))).toEqual([])
})
