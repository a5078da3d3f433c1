import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, inject, it } from 'vitest'
import { migrate } from '@/lib/cli/migrate'
import { closeClient, openClient } from '@/lib/data/client'
import { write } from '@/lib/data/write'
import { refusalOf } from '@/lib/web/error-to-response'
import { freshDatabase } from '../setup/database'
import { inLongRun } from '../setup/long-run'
import { cutConnections, startPostgres } from '../setup/postgres'
import { monday, owner } from '../use-cases/jobs/counter-shop'

const rounds = inLongRun ? 20 : 4
const writers = 4

/** What a deed's sender does: the same under the same id, until it is acknowledged. Anything but "not now" is a failure. */
async function untilTaken(name: string): Promise<number> {
  const op = { id: randomUUID(), hash: name }
  for (let tries = 1; ; tries++) {
    try {
      await write(owner, { now: monday, op }, async ({ tx, audit }) => {
        await tx.counter.create({ data: { name, value: 1 } })
        audit({ action: 'shop.change', subjectId: name })
      })
      return tries
    } catch (error) {
      const refusal = refusalOf(error)
      if (refusal.code !== 'unavailable') throw error
      await pause(50)
    }
  }
}

type Place = {
  readonly url: string
  readonly break: () => Promise<void>
  readonly close: () => Promise<void>
}

/** A server of its own, killed and started again: that takes seconds. */
async function ownServer(): Promise<Place> {
  const server = await startPostgres(join(inject('runFolder'), `killed_${randomUUID()}`))
  await server.administer(`CREATE DATABASE shop TEMPLATE template0 ENCODING 'UTF8'`)
  const url = server.urlOf('shop')
  await migrate(url)
  return { url, break: server.killAndStart, close: server.stop }
}

/** The run's server, which ends every connection to this database. */
async function cutOff(): Promise<Place> {
  const { url, remove } = await freshDatabase('postgresql')
  return { url, break: () => cutConnections(url), close: remove }
}

const broken = inLongRun ? 'PostgreSQL killed' : 'every connection to PostgreSQL cut'

it(`${broken} under load, ${rounds} times: what was sent is there once`, { timeout: 900_000 }, async () => {
  const place = await (inLongRun ? ownServer() : cutOff())
  process.env.DATABASE_URL = place.url
  const client = await openClient(place.url)
  const acknowledged: string[] = []
  let sentAgain = 0
  let done = false
  const writing = Array.from({ length: writers }, async (_, writer) => {
    for (let number = 0; !done; number++) {
      const name = `${writer} ${number}`
      sentAgain += (await untilTaken(name)) - 1
      acknowledged.push(name)
    }
  })
  for (let round = 0; round < rounds; round++) {
    const before = acknowledged.length
    await pause(20 + ((round * 37) % 300))
    await place.break()
    while (acknowledged.length < before + writers) await pause(20)
    if (inLongRun) process.stdout.write(`${round}: ${acknowledged.length} acknowledged, ${sentAgain} sent again\n`)
  }
  done = true
  await Promise.all(writing)
  const found = (await client.counter.findMany()).map(({ name }) => name)
  expect(found.sort()).toEqual(acknowledged.sort())
  expect(await client.operation.count()).toBe(acknowledged.length)
  expect(await client.auditEntry.count()).toBe(acknowledged.length)
  await closeClient(place.url)
  await place.close()
})
