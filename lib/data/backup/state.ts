import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { backupKinds } from '@/lib/core/backup/keep'
import { readBackupName, type NamedBackup } from './names'

/** Where the shop's own backups are. */
export const backupFolder = (data: string): string => join(/* turbopackIgnore: true */ data, 'backups')

const tried = z.object({
  kind: z.enum(backupKinds),
  atMs: z.number(),
  /** '' when it went well; otherwise why not, a whole sentence. */
  fault: z.string(),
  /** Of the second folder: '' when a copy stands there or none is set. */
  secondFault: z.string(),
  /** Photos or papers that are not whole in the shop itself. */
  leftOut: z.number(),
})

const stateSchema = z.object({
  lastTry: tried.nullable(),
  running: z.object({ pid: z.number(), sinceMs: z.number(), doing: z.string() }).nullable(),
  /** Name of a backup → when it was opened and found whole. */
  checkedMs: z.record(z.string(), z.number()),
})
export type BackupState = z.infer<typeof stateSchema>

const empty: BackupState = { lastTry: null, running: null, checkedMs: {} }
const statePath = (folder: string): string => join(/* turbopackIgnore: true */ folder, 'state.json')

/** What is known of the backups beside themselves; a note that cannot be read is as good as none. */
export function readBackupState(folder: string): BackupState {
  try {
    return stateSchema.parse(JSON.parse(readFileSync(statePath(folder), 'utf8')))
  } catch {
    return empty
  }
}

export function changeBackupState(folder: string, change: Partial<BackupState>): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const path = statePath(folder)
  writeFileSync(`${path}.new`, JSON.stringify({ ...readBackupState(folder), ...change }), { mode: 0o600 })
  renameSync(`${path}.new`, path) // whole or not at all
}

export type BackupFile = NamedBackup & { readonly path: string; readonly size: number }

/** The backups in a folder, the newest first. None when the folder is not there. */
export function backupsIn(folder: string): BackupFile[] {
  if (!existsSync(folder)) return []
  return readdirSync(folder)
    .flatMap((name) => {
      const named = readBackupName(name)
      const path = join(/* turbopackIgnore: true */ folder, name)
      return named ? [{ ...named, path, size: statSync(path).size }] : []
    })
    .sort((a, b) => b.atMs - a.atMs || (a.name < b.name ? 1 : -1))
}

/** Whether the process that said it makes a backup is still there. */
export function isRunning({ running }: BackupState): boolean {
  if (!running) return false
  try {
    process.kill(running.pid, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}
