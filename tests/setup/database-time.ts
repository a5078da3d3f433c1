import pg from 'pg'
import { KeptStatement } from '@/lib/data/gate/kept-statements'
import type { Provider } from '@/lib/data/gate/provider'

/** Milliseconds in which the database is at work on a piece of work: from a statement being sent until its rows are there. */
export async function databaseMs(provider: Provider, work: () => Promise<unknown>): Promise<number> {
  let spent = 0
  let open = 0
  let since = 0
  // While two are asked at once the time passes once.
  const begin: Begin = () => {
    if (open === 0) since = performance.now()
    open += 1
    return () => {
      open -= 1
      if (open === 0) spent += performance.now() - since
    }
  }
  const restore = provider === 'sqlite' ? timeSqlite(begin) : timePostgres(begin)
  try {
    await work()
  } finally {
    restore()
  }
  return spent
}

/** Gives what to call at the end. */
type Begin = () => () => void

function timeSqlite(begin: Begin): () => void {
  const bind = KeptStatement.prototype.bind
  KeptStatement.prototype.bind = function (args) {
    const bound = bind.call(this, args)
    const raw = () => {
      const rows = bound.raw()
      return {
        all: () => {
          const end = begin()
          try {
            return rows.all()
          } finally {
            end()
          }
        },
      }
    }
    return { ...bound, raw }
  }
  return () => {
    KeptStatement.prototype.bind = bind
  }
}

type Query = (...args: unknown[]) => unknown

/** The driver is told what to call when the rows are there; that they came is noted first. */
function timePostgres(begin: Begin): () => void {
  const home = pg.Client.prototype as unknown as { query: Query }
  const query = home.query
  home.query = function (this: unknown, ...args) {
    const then = args.at(-1)
    if (typeof then !== 'function') return query.apply(this, args)
    const end = begin()
    const noted: Query = (...answer) => {
      end()
      return (then as Query)(...answer)
    }
    return query.apply(this, [...args.slice(0, -1), noted])
  }
  return () => {
    home.query = query
  }
}
