import { join } from 'node:path'
import { build } from 'esbuild'
import { root } from './process.mjs'

/**
 * A command of this program in pieces that Node reads by itself, in two thirds of the time that its sources take; what it
 * asks for later is a piece of its own. What stands in packages stays there. `folder` is two below the root, as `lib/cli`
 * is, so that `root` holds in it.
 */
export const bundle = (file, folder) =>
  build({
    entryPoints: [join(root, file)],
    outdir: join(root, folder),
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    conditions: ['react-server'],
    sourcemap: 'linked',
    sourcesContent: false,
    logLevel: 'warning',
  })
