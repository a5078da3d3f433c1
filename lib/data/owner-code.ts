import 'server-only'
import { createHash, timingSafeEqual } from 'node:crypto'
import { readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { dataFolder } from '@/lib/env'

/** Only the hash of the code lies on disk; the code itself was shown once, on the console. */
const codeFile = (): string => join(dataFolder(), 'owner-code.sha256')

async function storedHash(): Promise<Buffer | null> {
  try {
    return Buffer.from((await readFile(codeFile(), 'utf8')).trim(), 'hex')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  }
}

/** As the console shows it, groups of four: typed in small letters or run together it is the same code. */
const asShown = (code: string): string =>
  code
    .toUpperCase()
    .replaceAll(/[^A-Z0-9]/g, '')
    .replaceAll(/(.{4})(?=.)/g, '$1-')

/** Whether this is the code that the console shows. False when there is none. */
export async function ownerCodeFits(code: string): Promise<boolean> {
  const stored = await storedHash()
  const given = createHash('sha256').update(asShown(code)).digest()
  return stored !== null && stored.length === given.length && timingSafeEqual(stored, given)
}

/** The code has made its owner and is good for nothing any more. */
export const spendOwnerCode = (): Promise<void> => rm(codeFile(), { force: true })
