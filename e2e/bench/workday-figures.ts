import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { median, type Figure } from '../../tests/bench/measure'
import { onRecord } from '../../tests/setup/on-record'
import { startPostgres, withPostgres } from '../../tests/setup/postgres'
import { startServer, type Server } from '../server'
import { startProxy } from './proxy'
import { cookieOf, said } from './shop-of-size'
import { workday, type Deed, type Workday, type Workplace } from './workday'

/** How long the day is; minutes. */
const minutes = Number(process.env.BRASSTAG_BENCH_MINUTES ?? 30)
/** Ticks with readings in all, beside some 20 moves a minute. */
const ticks = Math.max(6, Math.round(minutes * 4))
const goalMs = 300

type Filled = { readonly deeds: readonly Deed[]; readonly pages: readonly string[] }

async function fill(folder: string, env: Readonly<Record<string, string>>): Promise<Filled> {
  const ready = JSON.parse(await said('tests/setup/fill-demo.ts', [], folder, env)) as Record<
    string,
    { number: string }
  >
  const deeds = JSON.parse(await said('tests/bench/fill-ticks.ts', [String(ticks)], folder, env)) as Deed[]
  const jobs = Object.values(ready).map(({ number }) => `/jobs/${number}`)
  return { deeds, pages: ['/counter', '/away', '/customers', '/find?q=thorn', '/find?q=T-00', ...jobs.slice(0, 3)] }
}

async function workplace(url: string, { deeds, pages }: Filled): Promise<Workplace> {
  const cookies = {
    tablet: await cookieOf(url, 'ines'),
    machinist: await cookieOf(url, 'dov'),
    counter: await cookieOf(url, 'tamsin'),
  }
  return { url, deeds, pages, cookies }
}

type Use = { readonly heldMb: number; readonly cpuS: number }

/** Clock ticks of a second, and bytes of a page, as Linux has them on the machines that Node runs on. */
const [ticksOfSecond, bytesOfPage] = [100, 4096]

/** What the processes of a group hold now, and how long they have kept a processor busy. */
function useOf(group: number): Use {
  let [pages, ticksUsed] = [0, 0]
  for (const pid of readdirSync('/proc')) {
    if (!/^\d+$/u.test(pid)) continue
    try {
      const [, rest = ''] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')
      const fields = rest.split(' ').map(Number)
      if (fields[2] !== group) continue
      pages += fields[21] ?? 0
      ticksUsed += (fields[11] ?? 0) + (fields[12] ?? 0)
    } catch {
      // It has ended meanwhile.
    }
  }
  return { heldMb: (pages * bytesOfPage) / 1e6, cpuS: ticksUsed / ticksOfSecond }
}

const useOfAll = (servers: readonly Server[]): Use =>
  servers
    .map(({ group }) => useOf(group))
    .reduce((sum, one) => ({ heldMb: sum.heldMb + one.heldMb, cpuS: sum.cpuS + one.cpuS }))

type Seen = { readonly day: Workday; readonly held: readonly number[]; readonly cores: number }

/** A day; what the servers held again and again, and how many cores they kept busy in the mean. */
async function watched(place: Workplace, servers: readonly Server[]): Promise<Seen> {
  const held: number[] = []
  let over = false
  const watching = (async () => {
    while (!over) {
      held.push(useOfAll(servers).heldMb)
      await pause(minutes < 5 ? 1_000 : 10_000)
    }
  })()
  const before = useOfAll(servers).cpuS
  const day = await workday(place, minutes * 60_000)
  const cores = (useOfAll(servers).cpuS - before) / (minutes * 60)
  over = true
  await watching
  return { day, held, cores }
}

const quantile = (times: readonly number[], share: number): number =>
  times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * share))] ?? NaN

/** Whether each deed that was acknowledged is on record, and none twice. */
type Kept = { readonly ids: ReadonlySet<string>; readonly moves: number }

function figuresOf(name: string, { day, held, cores }: Seen, kept: Kept): Figure[] {
  const all = Object.values(day.times).flat()
  const slowest = Object.entries(day.times)
    .map(([what, times]) => ({ what, times }))
    .toSorted((a, b) => quantile(b.times, 0.95) - quantile(a.times, 0.95))
  const p95 = quantile(all, 0.95)
  const { ticks: ticked, moves } = day.acknowledged
  const lost = [...ticked, ...moves].filter((id) => !kept.ids.has(id)).length
  const twice = kept.moves - moves.length
  const third = Math.floor(held.length / 3)
  const growth = median(held.slice(-third)) / median(held.slice(third, 2 * third))
  const counted = `${all.length} answers in ${minutes} min, ${ticked.length} ticks and ${moves.length} moves`
  return [
    ...slowest.map(({ what, times }): Figure => {
      const measured = quantile(times, 0.95)
      const work = `${name}, ${what}: 95 of 100 (of ${times.length}; half ${quantile(times, 0.5).toFixed(0)}, most ${Math.max(...times).toFixed(0)})`
      return { work, measured, unit: 'ms', goal: `≤ ${goalMs}`, met: measured <= goalMs }
    }),
    {
      work: `${name}, every answer: 95 of 100 (${counted})`,
      measured: p95,
      unit: 'ms',
      goal: `≤ ${goalMs}`,
      met: p95 <= goalMs,
    },
    {
      work: `${name}, memory of the last third against the middle one (${median(held.slice(-third)).toFixed(0)} MB)`,
      ...{ measured: growth, unit: '×', goal: '≤ 1.1', met: growth <= 1.1 },
    },
    { work: `${name}, processor kept busy`, measured: cores, unit: 'cores', goal: '≤ 0.5', met: cores <= 0.5 },
    { work: `${name}, acknowledged and not on record`, measured: lost, unit: 'deeds', goal: '0', met: lost === 0 },
    { work: `${name}, moves on record beyond those sent`, measured: twice, unit: 'deeds', goal: '0', met: twice === 0 },
    {
      work: `${name}, answers that were refused or failed${day.failed.length > 0 ? `: ${day.failed[0] ?? ''}` : ''}`,
      ...{ measured: day.failed.length, unit: '', goal: '0', met: day.failed.length === 0 },
    },
  ]
}

const idsSql = 'SELECT "id" FROM "Operation"'
const movesSql = `SELECT count(*) AS "count" FROM "AuditEntry" WHERE "action" = 'visit.rack'`

/** 20 tablets and 10 people on one process and its file. Needs a build. */
export async function workdayFigures(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-day-'))
  try {
    const filled = await fill(folder, {})
    const [before = { count: 0 }] = onRecord<{ count: number }>(folder, movesSql)
    const server = await startServer('demo', folder)
    try {
      const seen = await watched(await workplace(server.url, filled), [server])
      const ids = new Set(onRecord<{ id: string }>(folder, idsSql).map(({ id }) => id))
      const [after = { count: 0 }] = onRecord<{ count: number }>(folder, movesSql)
      return figuresOf('20 tablets, 10 people', seen, { ids, moves: after.count - before.count })
    } finally {
      await server.stop()
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The same with two processes behind a proxy on one PostgreSQL that waits for the disk. */
export async function twoProcessFigures(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'brasstag-two-'))
  chmodSync(folder, 0o755)
  const postgres = await startPostgres(join(folder, 'postgres'), { durable: true })
  const proxy = await startProxy()
  const servers: Server[] = []
  try {
    await postgres.administer('CREATE DATABASE two')
    const env = { DATABASE_URL: postgres.urlOf('two'), BRASSTAG_URL: proxy.url, BRASSTAG_PROXIES: '127.0.0.1' }
    const data = join(folder, 'data')
    mkdirSync(data)
    const filled = await fill(data, env)
    const count = async (sql: string) =>
      (await withPostgres(env.DATABASE_URL, (client) => client.query<{ count: string }>(sql))).rows
    const before = Number((await count(movesSql))[0]?.count)
    for (let one = 0; one < 2; one++) servers.push(await startServer('demo', data, undefined, env))
    proxy.toNext(servers.map(({ url }) => url))
    const seen = await watched(await workplace(proxy.url, filled), servers)
    const { rows } = await withPostgres(env.DATABASE_URL, (client) => client.query<{ id: string }>(idsSql))
    const moves = Number((await count(movesSql))[0]?.count) - before
    return figuresOf('the same, two processes and PostgreSQL', seen, { ids: new Set(rows.map(({ id }) => id)), moves })
  } finally {
    for (const server of servers) await server.stop()
    proxy.stop()
    await postgres.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}
