import { mkdtempSync, rmSync, chmodSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startPostgres } from './postgres'

// A run that has failed, and has used PostgreSQL: it must end as it says here.
process.exitCode = 3
const folder = mkdtempSync(join(tmpdir(), 'brasstag-once-'))
chmodSync(folder, 0o755)
const server = await startPostgres(join(folder, 'postgres'))
await server.stop()
rmSync(folder, { recursive: true, force: true })
