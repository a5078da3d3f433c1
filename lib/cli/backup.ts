import { backupKinds, type BackupKind } from '@/lib/core/backup/keep'
import { sizeWords } from '@/lib/core/backup/size-words'
import { command, say } from './backup/command'
import { makeBackup } from './backup/make-backup'
import { dataFolderAsked } from './backup/which-folder'

/**
 * `npm run backup [folder]`: one archive with all of the shop, opened again and checked. While the server runs or not.
 * `--kind` is for the server, which calls this too.
 */
await command(async () => {
  process.umask(0o077)
  const args = process.argv.slice(2)
  const kind = backupKinds.find((known) => args.includes(`--kind=${known}`)) ?? 'by-hand'
  const [to] = args.filter((arg) => !arg.startsWith('--'))
  return said(await made(kind, to))
})

function made(kind: BackupKind, to: string | undefined) {
  process.env.BRASSTAG_DATA = dataFolderAsked()
  const data = process.env.BRASSTAG_DATA
  return makeBackup({
    ...{ data, kind, say, nowMs: Date.now(), second: process.env.BRASSTAG_BACKUP_TO ?? '' },
    url: process.env.DATABASE_URL || `file:${data}/brasstag.db`,
    ...(to === undefined ? {} : { to }),
  })
}

function said({ path, size, rows, files, leftOut, secondFault }: Awaited<ReturnType<typeof makeBackup>>): string {
  return [
    `Backup made and checked: ${path}`,
    `  ${sizeWords(size)}: ${rows} rows, ${files} photos and papers. It is as secret as the shop itself.`,
    ...(leftOut.length > 0 ? [`  ${leftOut.length} photos or papers are missing or damaged in the shop itself.`] : []),
    ...(secondFault ? [`  ${secondFault}`] : []),
  ].join('\n')
}
