import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { expect, it } from 'vitest'

const root = join(import.meta.dirname, '..', '..', '..')
const stations = join(root, 'app', '(staff)', 'stations')

/** What a file loads later, as a path from the root. */
const loadedBy = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/import\('([^']+)'\)/g)].map(([, name = '']) =>
    name.startsWith('@/') ? name.slice(2) : relative(root, join(dirname(file), name)),
  )

it('every part of the station app that comes later is fetched ahead: without the network it has to be there', () => {
  const files = readdirSync(stations, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(stations, name))
  const ahead = join(stations, '_app', 'load-ahead.ts')
  const fetched = new Set([...loadedBy(ahead), relative(root, join(stations, '_app', 'load-ahead'))])
  const later = files.filter((file) => file !== ahead).flatMap(loadedBy)
  expect(later.length).toBeGreaterThan(20)
  expect(later.filter((part) => !fetched.has(part))).toEqual([])
})
