import type { Provider } from './provider'

/**
 * The two tables of texts that Find looks in, each with an index over all runs of three letters: an FTS5 table beside it in
 * SQLite, which triggers keep in step in the transaction that changes a text; an index of pg_trgm in PostgreSQL, which the
 * database keeps itself. Neither is in the one model file, for the two databases have no common form of them: they are put
 * there with the triggers of the history, after the migrations.
 */
export const textTables = ['CustomerText', 'HeadText'] as const
export type TextTable = (typeof textTables)[number]

/** Example: `CustomerText_find`. */
export const findIndexOf = (table: TextTable): string => `${table}_find`

const parts = ['insert', 'delete', 'update'] as const
const triggerOf = (table: TextTable, verb: string): string => `${findIndexOf(table)}_${verb}`

/** PostgreSQL needs none. */
export const findTriggers = (provider: Provider): string[] =>
  provider === 'sqlite' ? textTables.flatMap((table) => parts.map((verb) => triggerOf(table, verb))) : []

/** FTS5 takes a row out of its index by being told what stood there. */
function sqliteTriggers(table: TextTable): string {
  const index = findIndexOf(table)
  const add = `INSERT INTO "${index}"(rowid, "text") VALUES (NEW."seq", NEW."text");`
  const take = `INSERT INTO "${index}"("${index}", rowid, "text") VALUES ('delete', OLD."seq", OLD."text");`
  const done = { insert: add, delete: take, update: `${take} ${add}` } as const
  return parts
    .map((verb) => {
      const name = triggerOf(table, verb)
      return `DROP TRIGGER IF EXISTS "${name}";
CREATE TRIGGER "${name}" AFTER ${verb.toUpperCase()} ON "${table}" BEGIN ${done[verb]} END;`
    })
    .join('\n')
}

const sqliteIndex = (table: TextTable): string =>
  `CREATE VIRTUAL TABLE IF NOT EXISTS "${findIndexOf(table)}"
  USING fts5("text", content='${table}', content_rowid='seq', tokenize='trigram case_sensitive 1');
${sqliteTriggers(table)}`

/** Without the list of rows that are still to be sorted in: a search would read all of it each time. */
const postgresIndex = (table: TextTable): string =>
  `CREATE INDEX IF NOT EXISTS "${findIndexOf(table)}" ON "${table}" USING gin ("text" gin_trgm_ops) WITH (fastupdate = off);`

export const findIndexScript = (provider: Provider): string =>
  provider === 'sqlite'
    ? textTables.map(sqliteIndex).join('\n')
    : ['CREATE EXTENSION IF NOT EXISTS pg_trgm;', ...textTables.map(postgresIndex)].join('\n')

/** Makes the index anew from the texts: a migration that made a table anew may have left it behind. */
export const rebuildFindIndex = (provider: Provider): string =>
  textTables
    .map((table) => {
      const index = findIndexOf(table)
      return provider === 'sqlite'
        ? `INSERT INTO "${index}"("${index}") VALUES ('rebuild');`
        : `REINDEX INDEX "${index}"; ANALYZE "${table}";`
    })
    .join('\n')
