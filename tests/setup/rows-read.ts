import { plainSqlite } from './plain-sqlite'
import type { Sent } from './statements'

/** The queries that bring more rows than this, each with how many; asked again of the database as it is. */
export function queriesOfMoreThan(most: number, url: string, statements: readonly Sent[]): string[] {
  return plainSqlite(url, (file) =>
    statements.flatMap(({ sql, args }) => {
      if (!/^\s*(SELECT|WITH)\b/i.test(sql)) return []
      const { length } = file.prepare(sql).all(...args)
      return length > most ? [`${length} rows: ${sql}`] : []
    }),
  )
}
