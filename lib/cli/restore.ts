import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { command, say } from './backup/command'
import { readManifest } from './backup/open-backup'
import { carryOn, restoreBackup } from './backup/restore-backup'
import { folderFor } from './backup/which-folder'

/**
 * `npm run restore <file> [folder]`: puts a backup in the place of what is in the data folder, or into another. `--carry-on`
 * ends one that was killed, and is what every start does first.
 */
await command(async () => {
  process.umask(0o077)
  const [file, folder] = process.argv.slice(2)
  if (file === '--carry-on') return (await carryOn(folderFor(null))) ?? ''
  if (!file) throw new Error('Name the backup: npm run restore /srv/brasstag/backups/brasstag-….tar.gz')
  const path = resolve(file)
  if (!existsSync(path)) throw new Error(`There is no ${path}. Nothing was changed.`)
  const { mode } = await readManifest(path)
  const data = folder ? resolve(folder) : folderFor(mode)
  const { manifest, aside, applied, leftOut, heldMails } = await restoreBackup({
    ...{ path, data, nowMs: Date.now(), say, postgres: process.env.DATABASE_URL ?? '' },
  })
  return [
    `Restored into ${data}: the ${mode === 'demo' ? 'demo' : 'shop'} as it was at ${manifest.madeAt}.`,
    ...(aside ? [`  What was there before is in ${aside}; remove it when you no longer need it.`] : []),
    ...(applied.length > 0 ? [`  The database was brought up to date: ${applied.join(', ')}.`] : []),
    ...(leftOut > 0 ? [`  ${leftOut} photos or papers were missing in the shop when the backup was made.`] : []),
    ...(heldMails > 0
      ? [`  ${heldMails} mails were waiting when the backup was made. None leaves by itself: the counter lists them.`]
      : []),
    `  Start it with: BRASSTAG_DATA=${data} npm ${mode === 'demo' ? 'start' : 'run shop'}`,
  ].join('\n')
})
