import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { demoPeople } from '../lib/demo/people'
import { elsewhereRun } from '../tests/setup/elsewhere'
import { startServer } from './server'
import { signInByRequest } from './sign-in-by-request'

/**
 * One demo shop for the whole run, fresh, with the castings that the tests cut; the workers find it by its address, and
 * everybody's sign-in in the environment. Checking a password takes seconds on purpose, so each is checked once.
 */
export default async function startDemo() {
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-demo-'))
  // For a spec that stops its server.
  const spare = mkdtempSync(join(tmpdir(), 'brasstag-spare-'))
  const remove = () => [folder, spare].forEach((one) => rmSync(one, { recursive: true, force: true }))
  const filled = await elsewhereRun('tests/setup/fill-demo.ts', [spare], { BRASSTAG_DATA: folder })
  if (!filled.ok) {
    remove()
    throw new Error(`The demo was not filled:\n${filled.said}`)
  }
  process.env.BRASSTAG_E2E_PREPARED = filled.answer
  process.env.BRASSTAG_E2E_SPARE = spare
  const server = await startServer('demo', folder)
  const stop = () => server.stop().finally(remove)
  try {
    process.env.BRASSTAG_E2E_URL = server.url
    process.env.BRASSTAG_E2E_SIGNED_IN = JSON.stringify(await signedIn(server.url))
    return stop
  } catch (error) {
    await stop()
    throw error
  }
}

/** The cookies of each person of the demo, by the name they sign in with. */
async function signedIn(url: string): Promise<Record<string, object[]>> {
  const cookies: Record<string, object[]> = {}
  for (const { signIn } of demoPeople) cookies[signIn] = await signInByRequest(url, signIn)
  return cookies
}
