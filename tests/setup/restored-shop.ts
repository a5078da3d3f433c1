import { closeClient, openClient } from '@/lib/data/client'
import { openDatabases } from './open-databases'

/** Makes the shop in this folder the one that `db()`, and so every use case, works on. */
export async function workIn(folder: string): Promise<{ readonly url: string }> {
  const url = `file:${folder}/brasstag.db`
  process.env.DATABASE_URL = url
  process.env.BRASSTAG_DATA = folder
  await openClient(url)
  openDatabases.add(() => closeClient(url))
  return { url }
}
