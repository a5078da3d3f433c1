import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'esbuild'
import { root } from './process.mjs'

/** What the service worker keeps: every file of the build, whose names hold their content. */
function filesOfBuild() {
  const folder = join(root, '.next', 'static')
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort()
    .map((name) => ({ url: `/_next/static/${name}`, revision: null }))
}

/** Bundles the service worker with the list of files of the build beside it. */
export async function buildWorker() {
  await build({
    entryPoints: [join(root, 'app', '_service-worker', 'worker.ts')],
    outfile: join(root, '.next', 'sw.js'),
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    define: { 'process.env.NODE_ENV': '"production"' },
    banner: { js: `self.brasstagFiles=${JSON.stringify(filesOfBuild())};` },
    logLevel: 'warning',
  })
}
