import { chmodSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'
import { TemplateServer } from './template-server'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of this run; everything in it is removed at the end. */
    runFolder: string
    templateSocket: string
  }
}

export default async function setup(project: TestProject) {
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-tests-'))
  chmodSync(folder, 0o755) // PostgreSQL may run as its own user and must reach its folder
  const server = new TemplateServer(folder, join(folder, 'templates.sock'))
  await server.listen()
  project.provide('runFolder', folder)
  project.provide('templateSocket', server.socketPath)
  return () => server.close()
}
