import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
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
  const given = process.env.BRASSTAG_E2E_FILLED
  const folder = given ?? (await fill())
  const remove = () => {
    if (!given) rmSync(folder, { recursive: true, force: true })
  }
  process.env.BRASSTAG_E2E_PREPARED = readFileSync(join(folder, 'prepared.json'), 'utf8')
  // For a spec that stops its server, and for one that makes its lists long.
  process.env.BRASSTAG_E2E_SPARE = join(folder, 'spare')
  process.env.BRASSTAG_E2E_LISTS = join(folder, 'lists')
  cpSync(join(folder, 'spare'), join(folder, 'lists'), { recursive: true })
  const server = await startServer('demo', join(folder, 'demo'))
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

/** `npm test` has filled a folder by now; a single spec has not. */
async function fill(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-demo-'))
  mkdirSync(join(folder, 'demo'))
  const { ok, said, answer } = await elsewhereRun('tests/setup/fill-demo.ts', [join(folder, 'spare')], {
    BRASSTAG_DATA: join(folder, 'demo'),
  })
  if (!ok) {
    rmSync(folder, { recursive: true, force: true })
    throw new Error(`The demo was not filled:\n${said}`)
  }
  writeFileSync(join(folder, 'prepared.json'), answer)
  return folder
}

/** The cookies of each person of the demo, by the name they sign in with. */
async function signedIn(url: string): Promise<Record<string, object[]>> {
  const cookies: Record<string, object[]> = {}
  for (const { signIn } of demoPeople) cookies[signIn] = await signInByRequest(url, signIn)
  return cookies
}
