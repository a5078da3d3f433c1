import { existsSync, writeFileSync } from 'node:fs'
import { describe, expect, it, vi } from 'vitest'
import { closeClient, openClient } from '@/lib/data/client'
import { lockFile } from '@/lib/data/gate/file-lock'
import { filePathOf } from '@/lib/data/gate/provider'
import { GatedSqlite } from '@/lib/data/gate/sqlite-gate'
import { refuseOldSqlite } from '@/lib/data/gate/sqlite-settings'
import { emptyDatabase, freshDatabase, testDatabase } from '../setup/database'
import { elsewhere } from '../setup/elsewhere'

vi.setConfig({ testTimeout: 120_000 }) // two of these start a process, one a PostgreSQL

const sql = (text: string) => ({ sql: text, args: [], argTypes: [] })
const counted = sql(`SELECT count(*) FROM "Counter"`)
const insert = (name: string) => sql(`INSERT INTO "Counter" (name, value) VALUES ('${name}', 1)`)

describe('the gate', () => {
  it.each(['queryRaw', 'executeRaw', 'executeScript'] as const)(
    'keeps what comes from outside waiting until the open transaction has ended: %s',
    async (way) => {
      const { url, remove } = await freshDatabase('sqlite')
      const connection = await new GatedSqlite(url).connect()
      const transaction = await connection.startTransaction()
      await transaction.executeRaw(insert('inside'))
      let answered = false
      const ask = {
        queryRaw: () => connection.queryRaw(insert('outside')),
        executeRaw: () => connection.executeRaw(insert('outside')),
        executeScript: () => connection.executeScript(insert('outside').sql),
      }
      const outside = ask[way]().then(() => {
        answered = true
      })
      await new Promise((resolve) => setTimeout(resolve, 50))
      expect(answered).toBe(false)
      await transaction.executeRaw(sql('ROLLBACK'))
      await transaction.rollback()
      await outside
      // Written for good, and not undone with the other's.
      expect((await connection.queryRaw(sql(`SELECT name FROM "Counter"`))).rows).toEqual([['outside']])
      await connection.dispose()
      await remove()
    },
  )

  it('refuses what comes to a transaction after its end, instead of writing it for good', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    const connection = await new GatedSqlite(url).connect()
    const transaction = await connection.startTransaction()
    await transaction.executeRaw(sql('ROLLBACK'))
    await expect(transaction.executeRaw(insert('too late'))).rejects.toThrow('TransactionAlreadyClosed')
    await transaction.rollback()
    await expect(transaction.queryRaw(counted)).rejects.toThrow('TransactionAlreadyClosed')
    expect((await connection.queryRaw(counted)).rows).toEqual([[0]])
    await connection.dispose()
    await remove()
  })

  it('undoes a transaction whose COMMIT failed before it lets anybody else in', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    const connection = await new GatedSqlite(url).connect()
    await connection.executeScript(
      `CREATE TABLE parent (id INTEGER PRIMARY KEY);
       CREATE TABLE child (of INTEGER REFERENCES parent (id) DEFERRABLE INITIALLY DEFERRED);`,
    )
    const transaction = await connection.startTransaction()
    await transaction.executeRaw(insert('of a failed commit'))
    await transaction.executeRaw(sql('INSERT INTO child VALUES (7)')) // checked at COMMIT, and not there
    await expect(transaction.executeRaw(sql('COMMIT'))).rejects.toThrow()
    await transaction.rollback()
    await connection.executeRaw(insert('afterwards'))
    expect((await connection.queryRaw(sql(`SELECT name FROM "Counter"`))).rows).toEqual([['afterwards']])
    await connection.dispose()
    await remove()
  })

  it('lets the next one in when a transaction timed out', async () => {
    const { client, close } = await testDatabase()
    const slow = client.$transaction(
      async (tx) => {
        await tx.counter.create({ data: { name: 'slow', value: 1 } })
        await new Promise((resolve) => setTimeout(resolve, 400))
        await tx.counter.create({ data: { name: 'slower', value: 1 } })
      },
      { timeout: 100 },
    )
    const beside = client.counter.create({ data: { name: 'beside', value: 1 } })
    await expect(slow).rejects.toThrow()
    await beside
    expect(await client.counter.findMany({ select: { name: true } })).toEqual([{ name: 'beside' }])
    await close()
  })

  it('gives a turn to whoever waited too long for one, and takes it back', async () => {
    const { client, close } = await testDatabase()
    const long = client.$transaction(async () => new Promise((resolve) => setTimeout(resolve, 300)))
    await expect(client.$transaction((tx) => tx.counter.count(), { maxWait: 50 })).rejects.toThrow()
    await long
    expect(await client.counter.count()).toBe(0)
    await close()
  })
})

describe('every connection', () => {
  it('writes ahead, waits for the disk, minds foreign keys, does not wait inside SQLite, sorts in memory', async () => {
    const { client, close } = await testDatabase()
    const read = async (name: string) =>
      Object.values((await client.$queryRawUnsafe<object[]>(`PRAGMA ${name}`))[0] ?? {})
    expect((await read('journal_mode')).map(String)).toEqual(['wal'])
    expect((await read('synchronous')).map(Number)).toEqual([2])
    expect((await read('foreign_keys')).map(Number)).toEqual([1])
    expect((await read('busy_timeout')).map(Number)).toEqual([0])
    expect((await read('temp_store')).map(Number)).toEqual([2])
    await close()
  })

  it.each(['3.51.2', '3.50.9', '2.99.99', '3.51', 'none'])('refuses SQLite %s', (version) => {
    expect(() => refuseOldSqlite(version)).toThrow(`SQLite ${version} is too old`)
  })

  it.each(['3.51.3', '3.52.0', '3.100.0', '4.0.0'])('takes SQLite %s', (version) => {
    expect(() => refuseOldSqlite(version)).not.toThrow()
  })
})

describe('one process holds one file', () => {
  it('a second process is refused in one line that names the first; afterwards it may', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    await openClient(url)
    const refused = await elsewhere(url)
    expect(refused.ok).toBe(false)
    expect(refused.said).toContain(`is in use by another Brasstag process (process ${process.pid})`)
    await closeClient(url)
    expect(await elsewhere(url)).toEqual({ ok: true, said: '' })
    await remove()
  })

  it('what a dead process left behind holds nothing', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    writeFileSync(`${filePathOf(url)}.holder`, '1') // a living process, but not one that holds the file
    writeFileSync(`${filePathOf(url)}.lock`, '')
    await openClient(url)
    await closeClient(url)
    expect(existsSync(`${filePathOf(url)}.holder`)).toBe(false)
    await remove()
  })

  it('is let go when it cannot be opened', async () => {
    const { url, remove } = await freshDatabase('sqlite')
    const path = filePathOf(url)
    writeFileSync(path, 'this is no database at all, however long one looks at it')
    await expect(openClient(url)).rejects.toThrow()
    lockFile(path).release()
    await remove()
  })
})

describe('PostgreSQL', () => {
  it('that sorts by the rules of a language is refused, with what to do', async () => {
    const { url, remove } = await emptyDatabase('postgresql', `LOCALE_PROVIDER icu ICU_LOCALE 'en'`)
    await expect(openClient(url)).rejects.toThrow(`LC_COLLATE 'C'`)
    await remove()
  })

  it('that was never migrated is refused', async () => {
    const { url, remove } = await emptyDatabase('postgresql')
    await expect(openClient(url)).rejects.toThrow('triggers are missing')
    await remove()
  })
})
