import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { keepStatements } from '@/lib/data/gate/kept-statements'
import { GatedSqlite } from '@/lib/data/gate/sqlite-gate'
import { freshDatabase, type FreshDatabase } from '../setup/database'

type Connection = Awaited<ReturnType<GatedSqlite['connect']>>

let database: FreshDatabase
let connection: Connection
const text = (sql: string, args: unknown[] = []) => ({
  sql,
  args,
  argTypes: args.map((arg) => ({
    scalarType: typeof arg === 'number' ? ('int' as const) : ('string' as const),
    arity: 'scalar' as const,
  })),
})
const read = async (sql: string, args: unknown[] = []) => connection.queryRaw(text(sql, args))
const change = (sql: string, args: unknown[] = []) => connection.executeRaw(text(sql, args))

beforeEach(async () => {
  database = await freshDatabase('sqlite')
  connection = await new GatedSqlite(database.url).connect()
  await connection.executeScript('CREATE TABLE bench (name TEXT PRIMARY KEY, place INTEGER)')
})
afterEach(async () => {
  await connection.dispose()
  await database.remove()
})

describe('a kept statement', () => {
  it('answers for what it is asked with each time, and for what is there by then', async () => {
    const insert = 'INSERT INTO bench (name, place) VALUES (?, ?)'
    const find = 'SELECT place FROM bench WHERE name = ?'
    expect(await change(insert, ['mill', 1])).toBe(1)
    expect((await read(find, ['mill'])).rows).toEqual([[1]])
    expect((await read(find, ['wash'])).rows).toEqual([])
    expect(await change(insert, ['wash', 2])).toBe(1)
    expect((await read(find, ['wash'])).rows).toEqual([[2]])
    expect((await read(find, ['mill'])).rows).toEqual([[1]])
  })

  it('is good for another time after it was refused', async () => {
    const insert = 'INSERT INTO bench (name, place) VALUES (?, ?)'
    await change(insert, ['mill', 1])
    await expect(change(insert, ['mill', 2])).rejects.toMatchObject({ cause: { kind: 'UniqueConstraintViolation' } })
    expect(await change(insert, ['wash', 2])).toBe(1)
  })

  it.each([
    ['by a script', (sql: string) => connection.executeScript(sql)],
    ['by a statement', (sql: string) => change(sql)],
  ])('sees a table that was changed since, %s', async (_, alter) => {
    const all = 'SELECT * FROM bench'
    await change('INSERT INTO bench (name, place) VALUES (?, ?)', ['mill', 1])
    expect(await read(all)).toMatchObject({ columnNames: ['name', 'place'], rows: [['mill', 1]] })
    await alter("ALTER TABLE bench ADD COLUMN note TEXT DEFAULT 'cleared'")
    expect(await read(all)).toMatchObject({
      columnNames: ['name', 'place', 'note'],
      rows: [['mill', 1, 'cleared']],
    })
  })
})

describe('what is kept', () => {
  it('is worked out once, and no more than 500 of it', () => {
    const prepared: string[] = []
    const prepare = (sql: string) => {
      prepared.push(sql)
      return { reader: false, run: () => ({ changes: 0, lastInsertRowid: 0 }) }
    }
    const client = { prepare, exec: () => client }
    keepStatements({ client } as never)
    const ask = (sql: string) => (client.prepare(sql) as unknown as { bind(args: unknown[]): object }).bind([])
    ask('SELECT 0')
    ask('SELECT 0')
    expect(prepared).toEqual(['SELECT 0'])
    for (let form = 1; form < 500; form += 1) ask(`SELECT ${form}`)
    ask('SELECT 0')
    expect(prepared).toHaveLength(500)
    // One more: the one that was longest not used is given up, and not the one that was asked for just now.
    ask('SELECT 500')
    ask('SELECT 0')
    expect(prepared).toHaveLength(501)
    ask('SELECT 1')
    expect(prepared).toHaveLength(502)
  })

  it('is refused when the adapter has no connection where it is looked for', () => {
    expect(() => keepStatements({} as never)).toThrow('keeps its connection elsewhere')
  })
})
