import { log } from '@/lib/data/log'
import { backUpAtNight } from '@/lib/use-cases/backup/start-backup'

const everyMs = 10 * 60 * 1000
/** A server that was just started has other things to do. */
const firstMs = 3 * 60 * 1000

// On globalThis, because the server may load this module more than once while there must be one worker.
const home = globalThis as typeof globalThis & { brasstagBackupWorker?: boolean }

/** Looks every ten minutes whether the nightly backup is due, for as long as the server runs. */
export function startBackupWorker(): void {
  if (home.brasstagBackupWorker) return
  home.brasstagBackupWorker = true
  async function look(): Promise<void> {
    try {
      await backUpAtNight(new Date())
    } catch (error) {
      log.error({ error: error instanceof Error ? error.name : 'unknown' }, 'nightly backup')
    }
    setTimeout(look, everyMs).unref()
  }
  setTimeout(look, firstMs).unref()
}
