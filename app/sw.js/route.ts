import { readFile } from 'node:fs/promises'
import { join } from 'node:path'

export const dynamic = 'force-dynamic'

/** The service worker, as the build left it (`lib/cli/build-worker.mjs`). */
export async function GET() {
  const script = await readFile(join(/* turbopackIgnore: true */ process.cwd(), '.next', 'sw.js'), 'utf8').catch(
    () => null,
  )
  if (script === null) return new Response(null, { status: 404 })
  return new Response(script, { headers: { 'Content-Type': 'text/javascript; charset=utf-8' } })
}
