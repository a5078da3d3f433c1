import { backupKinds, type BackupKind, type DatedBackup } from '@/lib/core/backup/keep'

/** A backup by its file's name, which says when it was made (UTC) and why. */
export type NamedBackup = DatedBackup & { readonly name: string }

const shape = new RegExp(
  `^brasstag-(\\d{4})(\\d{2})(\\d{2})-(\\d{2})(\\d{2})(\\d{2})-(${backupKinds.join('|')})\\.tar\\.gz$`,
)

/** Example: `brasstag-20260304-021000-nightly.tar.gz`. */
export function backupName(atMs: number, kind: BackupKind): string {
  const digits = new Date(atMs).toISOString().replaceAll(/[-:]/g, '')
  return `brasstag-${digits.slice(0, 8)}-${digits.slice(9, 15)}-${kind}.tar.gz`
}

/** Null: not a name that Brasstag gives. */
export function readBackupName(name: string): NamedBackup | null {
  const [, year, month, day, hour, minute, second, kind] = shape.exec(name) ?? []
  const atMs = Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`)
  return kind === undefined || Number.isNaN(atMs) ? null : { name, atMs, kind: kind as BackupKind }
}
