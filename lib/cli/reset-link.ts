import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { RefusedError } from '@/lib/core/errors'
import { closeClient, openClient } from '@/lib/data/client'
import { filePathOf, providerOf } from '@/lib/data/gate/provider'
import { resetLinkFromConsole } from '@/lib/use-cases/people/reset-link-from-console'
import { command } from './backup/command'
import { dataFolderAsked } from './backup/which-folder'
import { isToBeBroughtUpToDate } from './migrate'
import { settingsOf } from './settings.mjs'

/**
 * `npm run reset-link -- <sign-in name>`: a link to choose a new password, for a person whom nobody else can give one: the
 * only owner. `--without-second-factor` takes that away too. A SQLite file is open to one process, so the server is
 * stopped first; with PostgreSQL it may run.
 */
const flag = '--without-second-factor'

await command(async () => {
  const args = process.argv.slice(2)
  const [signIn] = args.filter((arg) => arg !== flag)
  if (!signIn || signIn.startsWith('-'))
    throw new Error(`Name the person: npm run reset-link -- orla (or with ${flag})`)
  process.env.BRASSTAG_DATA = dataFolderAsked()
  const url = process.env.DATABASE_URL || `file:${join(process.env.BRASSTAG_DATA, 'brasstag.db')}`
  try {
    await refuseUnfit(url)
    await openClient(url)
    return words(await resetLinkFromConsole({ signIn, withoutFactor: args.includes(flag) }, new Date()))
  } catch (error) {
    throw inWords(error)
  } finally {
    await closeClient(url)
  }
})

async function refuseUnfit(url: string): Promise<void> {
  if (providerOf(url) === 'sqlite' && !existsSync(filePathOf(url))) {
    throw new Error(`No link was made: ${filePathOf(url)} is not there. Name the data folder with BRASSTAG_DATA.`)
  }
  if (await isToBeBroughtUpToDate(url)) {
    throw new Error('No link was made: start Brasstag once, which brings the database up to date, and stop it.')
  }
}

function inWords(error: unknown): unknown {
  if (error instanceof RefusedError) return new Error(`No link was made. ${error.message}`, { cause: error })
  const isHeld = error instanceof Error && error.message.includes('is in use by another Brasstag process')
  const words = 'No link was made: Brasstag is running. Stop it, make the link, then start it again.'
  return isHeld ? new Error(words, { cause: error }) : error
}

function words({ name, path, expiresAt }: Awaited<ReturnType<typeof resetLinkFromConsole>>): string {
  return [
    `A link for ${name} to choose a new password. It works once, until ${expiresAt.toISOString().slice(0, 16)} UTC:`,
    `  ${String(settingsOf('shop').address).replace(/\/+$/, '')}${path}`,
    ...(process.env.BRASSTAG_URL ? [] : ['  Where Brasstag has another address, put that before /reset.']),
  ].join('\n')
}
