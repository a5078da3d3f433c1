import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { closeClient, openClient } from '@/lib/data/client'
import { bundled } from '../setup/bundled'
import { freshDatabase } from '../setup/database'
import { inLongRun } from '../setup/long-run'
import { plainSqlite } from '../setup/plain-sqlite'

/** Not the same moment each time: 5 ms to 290 ms into the writing, however many rounds there are. */
const killedAfterMs = (round: number, rounds: number): number => 5 + (round * 285) / (rounds - 1)
const root = join(import.meta.dirname, '..', '..')

/** Starts the writer, kills it in the middle of its work, and gives what it was told is written. */
async function writeAndKill(url: string, round: string, afterMs: number): Promise<string[]> {
  const args = ['--conditions=react-server', await bundled('tests/setup/write-until-killed.ts'), url, round]
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] })
    let said = ''
    let complained = ''
    child.stderr.on('data', (piece) => (complained += String(piece)))
    child.stdout.on('data', (piece) => {
      if (said === '') setTimeout(() => child.kill('SIGKILL'), afterMs)
      said += String(piece)
    })
    child.on('close', (_code, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(`The writer was to be killed but ended by itself: ${complained}`))
      else resolve(said.split('\n').slice(0, -1)) // a line that was cut is no acknowledgement
    })
  })
}

const providers = [
  { provider: 'sqlite', rounds: inLongRun ? 20 : 6 },
  { provider: 'postgresql', rounds: inLongRun ? 20 : 2 },
] as const

it.each(providers)(
  'a process killed at work, $rounds times: every acknowledged write is there ($provider)',
  { timeout: 400_000 },
  async ({ provider, rounds }) => {
    const { url, remove } = await freshDatabase(provider)
    const acknowledged: string[] = []
    for (let round = 0; round < rounds; round++) {
      acknowledged.push(...(await writeAndKill(url, `round ${round}`, killedAfterMs(round, rounds))))
      const client = await openClient(url) // the dead process holds no lock
      const found = new Set((await client.counter.findMany({ select: { name: true } })).map((row) => row.name))
      expect(acknowledged.filter((name) => !found.has(name))).toEqual([])
      const operations = new Set((await client.operation.findMany({ select: { id: true } })).map((row) => row.id))
      const halves = [...found].filter((name) => Number(name.split(' ').at(-1)) % 2 === 1 && !operations.has(name))
      expect(halves).toEqual([])
      await closeClient(url)
      if (provider === 'sqlite') {
        expect(plainSqlite(url, (file) => file.pragma('integrity_check', { simple: true }))).toBe('ok')
      }
      if (inLongRun)
        process.stdout.write(`${provider} ${round}: ${acknowledged.length} acknowledged, ${found.size} found\n`)
    }
    expect(acknowledged.length).toBeGreaterThan(rounds)
    await remove()
  },
)
