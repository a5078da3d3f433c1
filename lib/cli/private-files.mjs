import { chmodSync, existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'

/** What Brasstag itself puts into a data folder; whatever else somebody keeps there is left alone. */
const ours =
  /^(?:brasstag\.db.*|session-secret|owner-code\.sha256|demo-being-filled|files|backups|before-(?:restore|move)-.*|\.restor.*)$/

/** Only the user whose shop it is may look in: folders 700, files 600, whatever they were and whatever the umask is. */
export function makePrivate(folder) {
  process.umask(0o077)
  chmodSync(folder, 0o700)
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (ours.test(entry.name)) closeTo(join(folder, entry.name), entry)
  }
  const files = join(folder, 'files')
  if (!existsSync(files)) return
  for (const entry of readdirSync(files, { withFileTypes: true })) closeTo(join(files, entry.name), entry)
}

function closeTo(path, entry) {
  if (entry.isDirectory()) chmodSync(path, 0o700)
  else if (entry.isFile()) chmodSync(path, 0o600)
}
