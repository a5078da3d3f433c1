import { afterAll, vi } from 'vitest'
import { openDatabases } from './open-databases'

// The next file may run in the same process: it finds no database of this one, and the environment as it was.
const before = { ...process.env }

afterAll(async () => {
  for (const close of openDatabases) await close()
  vi.unstubAllEnvs()
  vi.unstubAllGlobals()
  for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name]
  Object.assign(process.env, before)
})
