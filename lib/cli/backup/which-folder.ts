import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { settingsOf } from '../settings.mjs'

const folderOf = (mode: 'demo' | 'shop'): string => String(settingsOf(mode).folder)

/** The data folder that a command is about: the one that is named, else the real shop's, else the demo's. */
export function dataFolderAsked(): string {
  const named = process.env.BRASSTAG_DATA
  if (named) return resolve(named)
  const holds = (folder: string): boolean => existsSync(join(folder, 'session-secret'))
  const found = [folderOf('shop'), folderOf('demo')].find(holds)
  if (found === undefined) throw new Error('No shop was found. Name its folder: BRASSTAG_DATA=/srv/brasstag npm run …')
  return found
}

/** The folder that a backup of this kind of shop is put back into. */
export const folderFor = (mode: 'demo' | 'shop' | null): string =>
  process.env.BRASSTAG_DATA ? resolve(process.env.BRASSTAG_DATA) : folderOf(mode ?? 'shop')
