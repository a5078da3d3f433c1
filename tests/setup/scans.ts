import { plainSqlite } from './plain-sqlite'
import type { Sent } from './statements'

/** Tables that hold a few dozen rows however long a shop works. */
const small = [
  ...['Shop', 'Settings', 'Counter', 'Person', 'Tablet', 'Vendor', 'Instrument', 'PriceItem', 'CastingRecord'],
  ...['TaxRate', 'MessageText', 'MailServer'],
]
const listed =
  /(?:FROM|JOIN)\s+(?:[`"]main[`"]\.)?[`"](\w+)[`"](?:\s+(?:AS\s+)?[`"]?(?!ON\b|WHERE\b|JOIN\b|LEFT\b|ORDER\b)(\w+)[`"]?)?/gi

/** Which table a name in the query plan stands for; tables of the statement's own WITH are none of the database's. */
function tablesOf(sql: string): ReadonlyMap<string, string> {
  const own = new Set([...sql.matchAll(/(?:WITH|,)\s+"(\w+)" AS \(/g)].map(([, name]) => name))
  const names = [...sql.matchAll(listed)].flatMap(([, table = '', alias]) =>
    own.has(table) ? [] : [[table, table] as const, ...(alias === undefined ? [] : [[alias, table] as const])],
  )
  return new Map(names)
}

/** The newest rows of a table, read from its end: as many as asked for and no more. */
const isNewestRows = (sql: string, plan: readonly string[]): boolean =>
  /\bLIMIT\b/i.test(sql) && /WHERE 1=1|WHERE "id" > ''/i.test(sql) && !plan.some((line) => line.includes('TEMP B-TREE'))

/** Rows of the statement's own subqueries and tables of its WITH are as many as those put together. */
const isOwn = (sql: string, name: string): boolean =>
  new RegExp(`\\)\\s*(?:AS\\s+)?["\`]?${name}\\b|\\bWITH\\b.*\\b${name}\\b.*\\bAS\\s*\\(`, 'is').test(sql)

/**
 * A whole table is read: to find rows in it, to make an index of it that is thrown away afterwards, or by an index on a
 * column that has a dozen values, such as the station of a step. A search index that is asked for words (M) reads those alone.
 */
const reads =
  /^SCAN (?!CONSTANT ROW|\w+ VIRTUAL TABLE INDEX \d+:M)(?:main\.)?(\w+)|^SEARCH (?:main\.)?(\w+) USING (?:AUTOMATIC|.*\((?:station|stepId)=\?\)$)/

/** Of an empty list of ids nothing is looked for: the client asks for rows of which 1=0, alone or beside other limits. */
function asksNothing(sql: string): boolean {
  const limits = /WHERE \(?([^()]*)\)?(?: ORDER BY| LIMIT|$)/.exec(sql)?.[1] ?? ''
  return limits.includes('1=0') && !limits.includes(' OR ')
}

/** The query plan's reads of a whole growing table, each with its statement; the same statement is looked at once. */
export function scansOf(url: string, statements: readonly Sent[]): string[] {
  const different = [...new Map(statements.map((sent) => [sent.sql, sent])).values()]
  return plainSqlite(url, (file) =>
    different
      .filter(({ sql }) => /^\s*(SELECT|WITH)\b/i.test(sql) && !asksNothing(sql))
      .flatMap(({ sql, args }) => {
        const rows = file.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...args) as { detail: string }[]
        const plan = rows.map((row) => row.detail)
        const tables = tablesOf(sql)
        const scanned = plan.filter((line) => {
          const [, scan, search] = reads.exec(line.replace(' LEFT-JOIN', '')) ?? []
          const name = scan ?? search
          if (name === undefined || (!tables.has(name) && isOwn(sql, name))) return false
          return !small.includes(tables.get(name) ?? '') && !isNewestRows(sql, plan)
        })
        return scanned.map((line) => `${line}: ${sql}`)
      }),
  )
}
