import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

export type Exported = { readonly name: string; readonly file: string }

export const corePath = (path: string): string => fileURLToPath(new URL(`../../lib/core/${path}`, import.meta.url))

/** `export function name(`, `export const name = (`, either with type parameters. */
const declared = /^export (?:function|const) (\w+)(?:<[^(]*>)?(?:\(| = (?:<[^(]*>)?\()/gm

/** The functions that these folders of the core give to others, as their source has them. */
export const exportedFrom = (folders: readonly string[]): readonly Exported[] =>
  folders.flatMap((folder) =>
    readdirSync(corePath(folder))
      .filter((file) => file.endsWith('.ts'))
      .flatMap((file) =>
        [...readFileSync(corePath(`${folder}/${file}`), 'utf8').matchAll(declared)].map(([, name = '']) => ({
          name,
          file: `${folder}/${file}`,
        })),
      ),
  )

/** Where the shop's mathematics is. */
export const computing = [
  'units',
  'chamber',
  'cut',
  'rate',
  'at-mill',
  'clearance',
  'seat',
  'head-now',
  'intake',
  'compression',
  'straightness',
  'flow',
  'expected',
  'springs',
  'flat-deck',
  'wanted',
  'valve-sheet',
  'finish',
] as const
