import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { parts } from '@/lib/data/backup/manifest'
import { syncPath } from '@/lib/data/backup/tar-gz'

/** Everything of a data folder that a restore puts in the place of what is there; the backups themselves stay. */
const swapped = [
  ...['brasstag.db', 'brasstag.db-wal', 'brasstag.db-shm', 'files', 'session-secret', 'owner-code.sha256'],
  'demo-being-filled',
] as const

const journalSchema = z.object({
  /** Folders inside the data folder: what comes, and where what was there goes. */
  from: z.string(),
  aside: z.string(),
  /** Names of what comes. */
  parts: z.array(z.string()),
})
type Journal = z.infer<typeof journalSchema>

export const journalName = 'restore-under-way.json'
export const incomingFolder = '.restoring'

/**
 * Puts what lies in `.restoring` in the place of what is there, which goes into a folder beside it. The journal is the moment
 * of decision: killed before it stands, nothing has changed; killed after, `finishSwap` carries on to the end.
 */
export async function swapIn(data: string, names: readonly string[], nowMs: number): Promise<string> {
  const stamp = new Date(nowMs).toISOString().slice(0, 19).replaceAll(/[-:]/g, '').replace('T', '-')
  const journal: Journal = { from: incomingFolder, aside: `before-restore-${stamp}`, parts: [...names] }
  const ready = join(data, incomingFolder, journalName)
  writeFileSync(ready, JSON.stringify(journal), { mode: 0o600 })
  await syncPath(ready)
  renameSync(ready, join(data, journalName))
  await syncPath(data)
  await finishSwap(data)
  return join(data, journal.aside)
}

export const isSwapUnderWay = (data: string): boolean => existsSync(join(data, journalName))

/** Each step can be done again: what was moved already is not there to be moved. */
export async function finishSwap(data: string): Promise<void> {
  const journal = journalSchema.parse(JSON.parse(readFileSync(join(data, journalName), 'utf8')))
  const [from, aside] = [join(data, journal.from), join(data, journal.aside)]
  mkdirSync(aside, { recursive: true, mode: 0o700 })
  for (const name of swapped) {
    const comes = journal.parts.includes(name)
    if (name === parts.secret && !comes) continue // the shop is given it another way, or keeps its own
    const isIn = comes && !existsSync(join(from, name))
    if (!isIn && existsSync(join(data, name))) renameSync(join(data, name), join(aside, name))
    if (comes && !isIn) renameSync(join(from, name), join(data, name))
  }
  await syncPath(aside)
  await syncPath(data)
  rmSync(join(data, journalName))
  rmSync(from, { recursive: true, force: true })
  await syncPath(data)
}
