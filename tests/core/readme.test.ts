import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { computing, corePath, exportedFrom } from './exported'

const readme = readFileSync(corePath('README.md'), 'utf8')
const list = readme.slice(readme.indexOf('## Every function'))

/** What the list says of a folder: the names and the files of each of its lines. */
function linesOf(folder: string): readonly (readonly string[])[] {
  const [, ...parts] = list.split(/^### /m)
  const part = parts.find((one) => one.startsWith(`${folder}\n`)) ?? ''
  return part
    .split(/^- /m)
    .slice(1)
    .map((line) => {
      const head = line.slice(0, line.indexOf('):'))
      return [...head.matchAll(/`([^`]+)`/g)].map(([, name = '']) => name)
    })
}

it.each([...computing, 'options', 'money'])('every function of %s stands in the list, with its file', (folder) => {
  const lines = linesOf(folder)
  const exported = exportedFrom([folder])
  expect(exported.length).toBeGreaterThan(1)
  const missing = exported.filter(
    ({ name, file }) => !lines.some((line) => line.includes(name) && line.includes(file.replace(`${folder}/`, ''))),
  )
  expect(missing).toEqual([])
  const known = new Set(exported.flatMap(({ name, file }) => [name, file.replace(`${folder}/`, '')]))
  expect(lines.flat().filter((name) => !known.has(name))).toEqual([])
})
