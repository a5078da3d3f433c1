import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { closeClient, openClient } from '@/lib/data/client'
import { freshDatabase } from '../setup/database'
import { inLongRun } from '../setup/long-run'
import { plainSqlite } from '../setup/plain-sqlite'

const rounds = inLongRun ? 20 : 8
/** So that the last round is killed 290 ms into the writing, however many there are. */
const laterEachRoundMs = 285 / (rounds - 1)
const root = join(import.meta.dirname, '..', '..')

/** Starts the writer, kills it in the middle of its work, and gives what it was told is written. */
function writeAndKill(url: string, round: string, afterMs: number): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const args = ['--import', 'tsx', 'tests/setup/write-until-killed.ts', url, round]
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

it(`a process killed at work, ${rounds} times: every acknowledged write is there`, { timeout: 400_000 }, async () => {
  const { url, remove } = await freshDatabase('sqlite')
  const acknowledged: string[] = []
  for (let round = 0; round < rounds; round++) {
    // Not the same moment each time: 5 ms to 290 ms into the writing.
    acknowledged.push(...(await writeAndKill(url, `round ${round}`, 5 + round * laterEachRoundMs)))
    const client = await openClient(url) // the dead process holds no lock
    const found = new Set((await client.counter.findMany({ select: { name: true } })).map((row) => row.name))
    expect(acknowledged.filter((name) => !found.has(name))).toEqual([])
    const operations = new Set((await client.operation.findMany({ select: { id: true } })).map((row) => row.id))
    const halves = [...found].filter((name) => Number(name.split(' ').at(-1)) % 2 === 1 && !operations.has(name))
    expect(halves).toEqual([])
    await closeClient(url)
    expect(plainSqlite(url, (file) => file.pragma('integrity_check', { simple: true }))).toBe('ok')
  }
  expect(acknowledged.length).toBeGreaterThan(rounds)
  await remove()
})
