import { readFileSync } from 'node:fs'

type Locked = {
  readonly version?: string
  readonly license?: string
  readonly dev?: boolean
  readonly devOptional?: boolean
  readonly optional?: boolean
}

export type Licensed = {
  readonly name: string
  readonly version: string
  readonly licence: string
  readonly optional: boolean
}

export const licencesPath = 'LICENCES.md'

/** What a package's own entry does not say; where it was read. */
const read: Readonly<Record<string, string>> = {
  // Its package names none; the file LICENSE that comes with it is the MIT text.
  'seq-queue': 'MIT',
}

/** All that is installed for a running shop, by the lock file; what only another kind of machine takes is optional. */
export function licensed(): readonly Licensed[] {
  const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
    readonly packages: Readonly<Record<string, Locked>>
  }
  return Object.entries(packages)
    .filter(([path, { dev, devOptional }]) => path !== '' && !dev && !devOptional)
    .map(([path, { version = '', license, optional = false }]) => {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length)
      return { name, version, licence: license ?? read[name] ?? 'not stated', optional }
    })
    .toSorted((a, b) => (a.licence + a.name < b.licence + b.name ? -1 : 1))
}

/** Whoever runs the app may use these as they come; they ask for nothing but their notice, and some for not even that. */
export const permissive = [
  ...['MIT', 'MIT-0', 'ISC', '0BSD', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', 'Unlicense', 'BlueOak-1.0.0'],
  ...['(MIT OR WTFPL)', '(MIT AND Zlib)', 'MIT and ISC', '(BSD-2-Clause OR MIT OR Apache-2.0)', 'MIT AND OFL-1.1'],
]

/** These ask for more; why the app may use them. */
export const asking: Readonly<Record<string, string>> = {
  'LGPL-3.0-or-later': 'the library that reads pictures: a file of its own, unchanged, that anybody may replace',
  'Apache-2.0 AND LGPL-3.0-or-later': 'the same library for Windows',
  'Apache-2.0 AND LGPL-3.0-or-later AND MIT': 'the same library as WebAssembly',
  'EPL-2.0': 'draws diagrams in the database tool; the app neither loads nor changes it',
  'OFL-1.1': 'the faces of the screen: may be embedded and handed on, not sold by themselves',
  'CC-BY-4.0': 'the table of browsers that the build reads: named here',
}

export function licencesPage(): string {
  const all = licensed()
  const byLicence = grouped(all)
  const parts = [...byLicence].map(([licence, packages]) => {
    const why = asking[licence]
    const names = packages.map(({ name, version, optional }) => `${name} ${version}${optional ? ' (optional)' : ''}`)
    return `## ${licence}: ${packages.length}\n\n${why === undefined ? '' : `${why[0]?.toUpperCase()}${why.slice(1)}.\n\n`}${names.map((name) => `- ${name}\n`).join('')}`
  })
  return `# Licences\n\nMade from the lock file by \`npm run licences\`: each package that a running shop installs. What is optional is for another\nkind of machine, or is left out where it cannot be built.\n\n${parts.join('\n')}`
}

function grouped(all: readonly Licensed[]): Map<string, Licensed[]> {
  const by = new Map<string, Licensed[]>()
  for (const one of all) by.set(one.licence, [...(by.get(one.licence) ?? []), one])
  return by
}
