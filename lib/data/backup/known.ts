import 'server-only'
import { existsSync, statSync } from 'node:fs'
import { dataFolder, storeEnv } from '@/lib/env'
import { backupFolder, backupsIn, isRunning, readBackupState, type BackupFile, type BackupState } from './state'

export type SecondFolder = {
  readonly path: string
  readonly isThere: boolean
  /** It would be lost together with the shop's own. */
  readonly isOnSameDisk: boolean
  readonly newestMs: number | null
}

export type KnownBackups = {
  readonly folder: string
  readonly list: readonly BackupFile[]
  readonly state: BackupState
  /** What is being done just now; null: no backup is being made. */
  readonly doing: string | null
  /** Null: none is set. */
  readonly second: SecondFolder | null
}

/** What is known of this shop's backups, from the folders themselves. */
export function knownBackups(): KnownBackups {
  const folder = backupFolder(dataFolder())
  const state = readBackupState(folder)
  return {
    ...{ folder, state, list: backupsIn(folder), second: secondFolder() },
    doing: isRunning(state) ? (state.running?.doing ?? '') : null,
  }
}

function secondFolder(): SecondFolder | null {
  const path = storeEnv().BRASSTAG_BACKUP_TO
  if (path === undefined) return null
  if (!existsSync(path)) return { path, isThere: false, isOnSameDisk: false, newestMs: null }
  return {
    ...{ path, isThere: true, newestMs: backupsIn(path)[0]?.atMs ?? null },
    isOnSameDisk: statSync(path).dev === statSync(dataFolder()).dev,
  }
}
