/** What stands in the way of writing to a disk, as the end of a sentence. */
const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'there is no room left on the disk',
  EDQUOT: 'there is no room left for this user on the disk',
  EFBIG: 'the file would be larger than this user may write',
  SQLITE_FULL: 'there is no room left on the disk',
  SQLITE_IOERR_WRITE: 'the disk did not take the file',
  EROFS: 'the disk can only be read',
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there',
  ENOENT: 'the folder or the file is not there',
  ENOTDIR: 'it is no folder',
  EIO: 'the disk reports a fault',
}

/** Why something failed, in words that somebody in a shop can act on; what is not foreseen is said as it came. */
export function faultWords(error: unknown): string {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : ''
  const known = reasons[code] ?? reasons[code.replace(/^(SQLITE_IOERR)_.*/, 'SQLITE_IOERR_WRITE')]
  return known ?? (error instanceof Error ? error.message : String(error)).replace(/\.$/, '')
}
