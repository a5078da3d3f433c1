import { createHash } from 'node:crypto'
import { createWriteStream, mkdtempSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { PassThrough } from 'node:stream'
import { parse } from 'csv-parse/sync'
import { beforeAll, describe, expect, inject, it, vi } from 'vitest'
import { dictionaryOf } from '@/lib/cli/export/dictionary'
import { goesAlong } from '@/lib/cli/export/left-out'
import { writeExport } from '@/lib/cli/export/write-export'
import { readTarGz } from '@/lib/data/backup/tar-gz'
import { demoStaff } from '@/lib/demo/shop'
import { takeEverything } from '@/lib/use-cases/export/take-everything'
import { demoMoment, filledDemo } from '../../setup/demo-shop'
import type { TestDatabase } from '../../setup/database'
import { plainSqlite } from '../../setup/plain-sqlite'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 300_000 })

let demo: TestDatabase
const found = new Map<string, Buffer>()
const steps: (readonly [number, number])[] = []

beforeAll(async () => {
  demo = await filledDemo()
  await demo.client.customerContact.updateMany({ where: {}, data: { address: '=HYPERLINK("x") "quoted", é' } })
  const path = join(mkdtempSync(join(inject('runFolder'), 'export-')), 'everything.tar.gz')
  const progress = (done: number, of: number) => void steps.push([done, of])
  await writeExport({ url: demo.url, data: demo.folder, progress }, createWriteStream(path))
  await readTarGz(path, async (name, _, content) => {
    const pieces: Buffer[] = []
    for await (const piece of content as AsyncIterable<Buffer>) pieces.push(piece)
    found.set(name, Buffer.concat(pieces))
  })
})

type Json = Readonly<Record<string, string | number | boolean | null>>
const textOf = (name: string): string => (found.get(name) ?? Buffer.alloc(0)).toString('utf8')
const csv = (name: string) => parse(textOf(name), { bom: true, columns: true }) as Record<string, string>[]
const json = (table: string) => JSON.parse(textOf(`json/${table}.json`)) as Json[]
const rowsOf = <Row>(sql: string): Row[] => plainSqlite(demo.url, (file) => file.prepare(sql).all() as Row[])

describe('everything for another program', () => {
  it('has every table twice, with all of its rows, and the dictionary says what each column means', () => {
    const tables = [...new Set(dictionaryOf().map(({ table }) => table))].filter((table) => goesAlong(table))
    expect(tables.length).toBeGreaterThan(50)
    expect([...found.keys()].filter((name) => name.startsWith('csv/')).sort()).toEqual(
      tables.map((table) => `csv/${table}.csv`).sort(),
    )
    const said = csv('dictionary.csv')
    for (const table of tables) {
      const [count] = rowsOf<{ n: number }>(`SELECT count(*) AS n FROM "${table}"`)
      expect([table, csv(`csv/${table}.csv`).length, json(table).length]).toEqual([table, count?.n, count?.n])
      const columns = said.filter((line) => line.Table === table && line.Column !== '').map((line) => line.Column)
      const heading = textOf(`csv/${table}.csv`).split('\r\n')[0] ?? ''
      expect(heading.replace('\uFEFF', '')).toBe(
        columns
          .sort()
          .map((column) => `"${column}"`)
          .join(','),
      )
    }
    expect(said.find((line) => line.Table === 'Shop' && line.Column === 'mode')?.Meaning).toContain('demo | shop')
  })

  it('says the same in both, figures to the last bit and moments in UTC', () => {
    const stored = rowsOf<{ id: string; value: number; text: string }>(
      `SELECT id, value, text FROM "CastingFigure" ORDER BY id`,
    )
    expect(json('CastingFigure').map(({ id, value, text }) => ({ id, value, text }))).toEqual(stored)
    expect(csv('csv/CastingFigure.csv').map(({ id, value }) => ({ id, value: Number(value) }))).toEqual(
      stored.map(({ id, value }) => ({ id, value })),
    )
    const person = json('Person').find(({ signIn }) => signIn === 'orla')
    const [row] = rowsOf<{ createdAt: string }>(`SELECT "createdAt" FROM "Person" WHERE "signIn" = 'orla'`)
    expect(person?.createdAt).toMatch(/Z$/)
    expect(Date.parse(String(person?.createdAt))).toBe(Date.parse(row?.createdAt ?? ''))
  })

  it('has no formula for a spreadsheet, and the text as it is for a program', () => {
    expect(csv('csv/CustomerContact.csv')[0]?.address).toBe(`'=HYPERLINK("x") "quoted", é`)
    expect(json('CustomerContact')[0]?.address).toBe('=HYPERLINK("x") "quoted", é')
  })

  it('lets nobody sign in: no hash, token or key is in it', () => {
    const all = [...found]
      .filter(([name]) => !name.startsWith('files/'))
      .map(([, bytes]) => bytes.toString('utf8'))
      .join('\n')
    const people = rowsOf<{ passwordHash: string; pinHash: string | null }>(
      `SELECT "passwordHash", "pinHash" FROM "Person"`,
    )
    const links = rowsOf<{ tokenHash: string }>(`SELECT "tokenHash" FROM "CustomerLink"`)
    const secrets = [
      ...people.flatMap(({ passwordHash, pinHash }) => [passwordHash, pinHash ?? '']),
      ...links.map((link) => link.tokenHash),
    ]
    expect(secrets.filter((secret) => secret.length > 10).length).toBeGreaterThan(5)
    expect(secrets.filter((secret) => secret.length > 10 && all.includes(secret))).toEqual([])
    // Whoever adds such a column says so in its comment or its name: then it must be left out.
    const secretive = dictionaryOf().filter(
      ({ table, column, meaning }) =>
        column !== '' &&
        goesAlong(table, column) &&
        /(?:hash|token|sealed|secret|password|key of)/i.test(
          `${column} ${meaning}`.replace(/sha256|hash of (?:the file|what)/gi, ''),
        ),
    )
    expect(secretive.map(({ table, column }) => `${table}.${column}`)).toEqual([])
  })

  it('has every photo and paper as it is stored', () => {
    const stored = rowsOf<{ sha256: string }>(`SELECT sha256 FROM "File" ORDER BY sha256`).map(({ sha256 }) => sha256)
    const files = [...found].filter(([name]) => name.startsWith('files/'))
    expect(stored.length).toBeGreaterThan(20)
    expect(files.map(([, bytes]) => createHash('sha256').update(bytes).digest('hex')).sort()).toEqual(stored)
    expect(files.every(([name]) => /^files\/[0-9a-f]{64}\.(?:jpg|png|webp|pdf)$/.test(name))).toBe(true)
  })

  it('says how far it is, to the end', () => {
    expect(steps.map(([done]) => done)).toEqual(steps.map((_, index) => index + 1))
    expect(steps.at(-1)?.[0]).toBe(steps.at(-1)?.[1])
  })

  it('leaves nothing behind when its reader goes away, and can be taken again', async () => {
    const target = new PassThrough({ highWaterMark: 16 })
    const ended = writeExport({ url: demo.url, data: demo.folder }, target)
    target.once('data', () => target.destroy())
    await expect(ended).rejects.toThrow()
    const left = readdirSync(join(demo.folder, 'backups')).filter((name) => name.startsWith('.export-'))
    expect(left).toEqual([])
  })

  it('is for the owner, and on record', async () => {
    const { orla, tamsin } = await demoStaff()
    const start = () => new ReadableStream<Uint8Array>()
    await expect(takeEverything(tamsin, { now: demoMoment }, start)).rejects.toThrow()
    expect((await takeEverything(orla, { now: demoMoment }, start)).name).toBe('everything-2026-03-08.tar.gz')
    const entries = await demo.client.auditEntry.findMany({ where: { action: 'export.everything' } })
    expect(entries.map(({ actorId }) => actorId)).toEqual([orla.personId])
  })
})
