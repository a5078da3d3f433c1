import { chmodSync, statSync } from 'node:fs'
import { dirname } from 'node:path'

const mayPass = 0o001

/**
 * Lets another user of this machine pass through the folders above a program: PostgreSQL runs as its own user, and a clone
 * in a private folder would be closed to it. Passing only, no reading. Gives back how to close the way again.
 */
export function openWayTo(folder: string): () => void {
  const closed: { path: string; mode: number }[] = []
  for (let path = folder; dirname(path) !== path; path = dirname(path)) {
    const { mode } = statSync(path)
    if ((mode & mayPass) === 0) closed.push({ path, mode })
  }
  for (const { path, mode } of closed) chmodSync(path, mode | mayPass)
  return () => {
    for (const { path, mode } of closed) chmodSync(path, mode)
  }
}
