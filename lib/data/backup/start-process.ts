import 'server-only'
import type { BackupKind } from '@/lib/core/backup/keep'
import { dataFolder } from '@/lib/env'
import { log } from '../log'
import { startOwnCommand } from './own-command'
import { backupFolder, changeBackupState, readBackupState } from './state'

/**
 * Makes a backup in a process of its own, by the same command as by hand: packing and checking take all of a core for a while,
 * and the people at work must not wait for that. What came of it is in the state beside the backups.
 */
export function startBackupProcess(kind: BackupKind, nowMs: number): void {
  const child = startOwnCommand('backup', [`--kind=${kind}`], 'ignore')
  const folder = backupFolder(dataFolder())
  if (child.pid !== undefined)
    changeBackupState(folder, { running: { pid: child.pid, sinceMs: nowMs, doing: 'starting' } })
  child.on('error', () => noteNotRun(folder, kind, nowMs))
  child.on('close', (code) => {
    if (code === 0) return
    log.error({ code }, 'backup')
    if ((readBackupState(folder).lastTry?.atMs ?? 0) < nowMs) noteNotRun(folder, kind, nowMs)
  })
}

/** The command did not come as far as to say itself why. */
function noteNotRun(folder: string, kind: BackupKind, nowMs: number): void {
  const fault = 'No backup was made: the command did not run to its end. Run npm run backup by hand to see why.'
  try {
    changeBackupState(folder, {
      running: null,
      lastTry: { kind, atMs: nowMs, fault, secondFault: '', leftOut: 0 },
    })
  } catch (error) {
    log.error({ error: error instanceof Error ? error.name : 'unknown' }, 'backup')
  }
}
