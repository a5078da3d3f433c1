import 'server-only'
import { databaseUrlOfProcess } from '@/lib/env'
import type { Reader } from './db'
import { findIndexOf, type TextTable } from './gate/find-index'
import { providerOf } from './gate/provider'

/** Of how many matches the best are picked: the newest. */
export const mostLookedAt = 200

const ownColumn = { CustomerText: 'customerId', HeadText: 'headId' } as const satisfies Record<TextTable, string>

/**
 * Ids of the newest rows whose text has all these parts. A part of three letters and more is looked up in the index; a
 * shorter one begins with a space (lib/core/find/fold.ts). One letter alone names nobody: it only narrows the others.
 */
export async function withParts(
  reader: Reader,
  table: TextTable,
  parts: readonly string[],
  take = mostLookedAt,
): Promise<string[]> {
  const indexed = parts.filter((part) => [...part].length >= 3)
  if (indexed.length === 0) return []
  const narrowing = parts.filter((part) => [...part].length < 3)
  const { sql, params } =
    providerOf(databaseUrlOfProcess()) === 'sqlite'
      ? ofSqlite(table, indexed, narrowing)
      : ofPostgres(table, [...indexed, ...narrowing])
  const rows = await reader.$queryRawUnsafe<{ id: string }[]>(`${sql} LIMIT ${take}`, ...params)
  return rows.map(({ id }) => id)
}

type Statement = { readonly sql: string; readonly params: readonly string[] }

/** Parts are letters and figures alone, and a space: nothing in them means anything to either language. */
const like = (part: string): string => `%${part}%`

function ofSqlite(table: TextTable, indexed: readonly string[], narrowing: readonly string[]): Statement {
  const index = findIndexOf(table)
  const more = narrowing.map(() => `AND t."text" LIKE ?`).join(' ')
  return {
    sql: `SELECT t."${ownColumn[table]}" AS "id" FROM "${index}" f CROSS JOIN "${table}" t ON t."seq" = f.rowid
      WHERE f."text" MATCH ? ${more} ORDER BY f.rowid DESC`,
    params: [indexed.map((part) => `"${part}"`).join(' AND '), ...narrowing.map(like)],
  }
}

/** Of a word that so many have, more matches are not fetched to find the newest among them. */
const mostFetched = 1000

/** Sorted apart, so that the planner does not walk the key from its end through all that do not match. */
function ofPostgres(table: TextTable, parts: readonly string[]): Statement {
  return {
    sql: `SELECT "id" FROM (SELECT "seq", "${ownColumn[table]}" AS "id" FROM "${table}"
      WHERE ${parts.map((_, at) => `"text" LIKE $${at + 1}`).join(' AND ')} LIMIT ${mostFetched}) "found"
      ORDER BY "seq" DESC`,
    params: parts.map(like),
  }
}
