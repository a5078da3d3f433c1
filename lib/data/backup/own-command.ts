import 'server-only'
import { spawn, type ChildProcess, type StdioOptions } from 'node:child_process'
import { join } from 'node:path'
import { dataFolder } from '@/lib/env'

/** One of the program's own commands in a process of its own, on this shop's data: what it takes of a core, nobody waits for. */
export function startOwnCommand(name: 'backup' | 'export', args: readonly string[], stdio: StdioOptions): ChildProcess {
  const root = process.cwd()
  const file = join(/* turbopackIgnore: true */ root, 'lib', 'cli', `${name}.ts`)
  return spawn(process.execPath, ['--conditions=react-server', '--import', 'tsx', file, ...args], {
    ...{ cwd: root, stdio },
    env: { ...process.env, NODE_OPTIONS: '', BRASSTAG_DATA: dataFolder() },
  })
}
