import { existsSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { closeClient, openClient } from '@/lib/data/client'
import { filePathOf, providerOf } from '@/lib/data/gate/provider'
import { dataFolder, databaseUrlOfProcess } from '@/lib/env'
import { makeBackup } from './backup/make-backup'
import { checkAtStart } from './backup/start-check'
import { newOwnerCode } from './first-owner'
import { isToBeBroughtUpToDate, migrate } from './migrate'
import { oneAfterOther } from './one-after-other'
import { refuseOtherMode, writeMode, type Mode } from './shop-mode'
import { whyNot } from './why'

/**
 * The part of a start that needs the database: refuses another mode's, brings it up to date, fills the demo once, gives
 * out the code of a shop without an owner. Says what it does on stderr and answers on stdout, as JSON, with what the
 * command shows at the end.
 */
const say = (words: string) => process.stderr.write(`${words}\n`)

type Answer = { readonly demo?: DemoAnswer; readonly ownerCode?: string }
type DemoAnswer = { readonly people: readonly object[]; readonly password: string }

async function prepare(mode: Mode): Promise<Answer> {
  const url = databaseUrlOfProcess()
  if (providerOf(url) === 'sqlite' && !existsSync(fillingMark())) {
    checkAtStart(filePathOf(url), dataFolder(), process.env.BRASSTAG_BACKUP_TO)
  }
  await refuseOtherMode(url, mode, providerOf(url) === 'sqlite' ? dataFolder() : 'The database of DATABASE_URL')
  if (mode === 'demo') forgetHalfADemo(url)
  if (await isToBeBroughtUpToDate(url)) await backUpFirst(url)
  const applied = await migrate(url)
  if (applied.length > 0) say(`• Database brought up to date: ${applied.join(', ')}`)
  const client = await openClient(url)
  await writeMode(client, mode, new Date())
  const isEmpty = (await client.person.count()) === 0
  if (mode === 'demo') return { demo: await demo(isEmpty) }
  return isEmpty ? { ownerCode: newOwnerCode(dataFolder()) } : {}
}

/** Without a backup the database is not touched. */
async function backUpFirst(url: string): Promise<void> {
  say('• Making a backup before the database is brought up to date …')
  const order = { url, data: dataFolder(), kind: 'before-update', nowMs: Date.now() } as const
  try {
    await makeBackup({ ...order, second: process.env.BRASSTAG_BACKUP_TO ?? '' })
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw new Error(`${why} The database is as it was; start again when that is put right.`, { cause: error })
  }
}

const fillingMark = (): string => join(dataFolder(), 'demo-being-filled')

/** A first start that was interrupted left a part of the demo, and nobody's work: it begins again. */
function forgetHalfADemo(url: string): void {
  if (!existsSync(fillingMark())) return
  if (providerOf(url) === 'postgresql') {
    throw new Error(
      'The demo was only half filled when it was stopped: drop this PostgreSQL database and make it again.',
    )
  }
  for (const end of ['', '-wal', '-shm']) rmSync(`${filePathOf(url)}${end}`, { force: true })
  rmSync(fillingMark())
}

async function demo(isEmpty: boolean): Promise<DemoAnswer> {
  const { demoPeople, demoPassword } = await import('@/lib/demo/people')
  if (isEmpty) {
    say('• Filling the demo shop (only on the first start) …')
    writeFileSync(fillingMark(), '')
    const { seedDemo } = await import('@/lib/demo/seed')
    await seedDemo(new Date())
    rmSync(fillingMark())
  }
  const people = demoPeople.map(({ name, signIn, roles, pin }) => ({
    name,
    signIn,
    roles: roles.join(', '),
    pin: pin ?? 'none',
  }))
  return { people, password: demoPassword }
}

try {
  const mode = process.argv[2] === 'demo' ? 'demo' : 'shop'
  const answer = await oneAfterOther(databaseUrlOfProcess(), 'start', () => prepare(mode), say)
  await closeClient()
  process.stdout.write(JSON.stringify(answer))
} catch (error) {
  // A refusal is one clear line; anything unforeseen shows where it came from.
  say(whyNot(error))
  process.exitCode = 1
}
