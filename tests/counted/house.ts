import { readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import ts from 'typescript'
import { gitFiles } from './git-files'

/** The state of the house in figures that come from the sources alone. */
export type Count = { readonly what: string; readonly now: number; readonly atMost: number | null }

export const root = join(import.meta.dirname, '..', '..')

const isSource = (file: string): boolean => /^(app|lib)\/.*\.(tsx?|mjs|css)$/.test(file)
const isCode = (file: string): boolean => /\.(tsx?|mjs)$/.test(file)
const linesOf = (text: string): number => text.split('\n').length - 1

export function countHouse(): Count[] {
  const sources = new Map(
    gitFiles(root)
      .filter(isSource)
      .map((file) => [file, readFileSync(join(root, file), 'utf8')] as const),
  )
  const code = new Map([...sources].filter(([file]) => isCode(file)))
  const imports = importsOf(code)
  const found = (pattern: RegExp, where: RegExp = /./): number =>
    [...code].reduce(
      (sum, [file, text]) => sum + (where.test(file) ? [...text.matchAll(new RegExp(pattern, 'g'))].length : 0),
      0,
    )
  const circles = circlesOf(imports)
  return [
    {
      what: 'lines in app and lib',
      now: [...sources.values()].reduce((sum, text) => sum + linesOf(text), 0),
      atMost: 57_152,
    },
    { what: 'circles of files that import each other', now: circles.length, atMost: 0 },
    { what: 'files in the largest circle', now: Math.max(0, ...circles.map((files) => files.length)), atMost: 0 },
    { what: 'imports between rooms of lib/use-cases', now: betweenRooms(imports), atMost: 0 },
    { what: 'reads through the database client in lib/use-cases', now: found(read, /^lib\/use-cases\//), atMost: 0 },
    { what: 'router.refresh() after a deed', now: found(/router\.refresh\(\)/), atMost: null },
    {
      what: 'ways back after sign-in typed by hand',
      now: found(/requirePerson\([^()]*,\s*[`'"]/, /^app\//),
      atMost: 0,
    },
    { what: 'prettier-ignore', now: found(/prettier-ignore/), atMost: 0 },
  ]
}

const read = /\.(?:findMany|findUnique|findUniqueOrThrow|findFirst|findFirstOrThrow|groupBy|aggregate|count)\(\{/

/** File → files of ours that it imports, types included. */
export function importsOf(code: ReadonlyMap<string, string>): Map<string, string[]> {
  const resolve = (from: string, name: string): string | null => {
    const path = name.startsWith('@/') ? name.slice(2) : name.startsWith('.') ? join(dirname(from), name) : null
    if (path === null) return null
    const plain = relative(root, join(root, path))
    return ['', '.ts', '.tsx', '.mjs', '/index.ts'].map((end) => plain + end).find((file) => code.has(file)) ?? null
  }
  return new Map(
    [...code].map(([file, text]) => [
      file,
      ts
        .preProcessFile(text, true, true)
        .importedFiles.map(({ fileName }) => resolve(file, fileName))
        .filter((found) => found !== null),
    ]),
  )
}

const roomOf = (file: string): string | null => /^lib\/use-cases\/([^/]+)\//.exec(file)?.[1] ?? null

const betweenRooms = (imports: ReadonlyMap<string, readonly string[]>): number =>
  [...imports].reduce(
    (sum, [file, targets]) =>
      sum +
      targets.filter((target) => roomOf(file) !== null && roomOf(target) !== null && roomOf(target) !== roomOf(file))
        .length,
    0,
  )

/** Groups of files that reach each other (Tarjan's strongly connected components, of two files or more). */
export function circlesOf(imports: ReadonlyMap<string, readonly string[]>): string[][] {
  const index = new Map<string, number>()
  const low = new Map<string, number>()
  const stack: string[] = []
  const circles: string[][] = []
  const visit = (file: string): void => {
    index.set(file, index.size)
    low.set(file, index.get(file) ?? 0)
    stack.push(file)
    for (const target of imports.get(file) ?? []) {
      if (!index.has(target)) visit(target)
      if (stack.includes(target)) low.set(file, Math.min(low.get(file) ?? 0, low.get(target) ?? 0))
    }
    if (low.get(file) !== index.get(file)) return
    const circle = stack.splice(stack.indexOf(file))
    if (circle.length > 1) circles.push(circle)
  }
  for (const file of imports.keys()) if (!index.has(file)) visit(file)
  return circles
}
