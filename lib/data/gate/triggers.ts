import { findIndexScript, findTriggers } from './find-index'
import type { Provider } from './provider'

/** Facts that are only ever added to. A trigger of the database refuses everything else, whoever asks. */
export const appendOnlyTables = [
  'AuditEntry',
  'VisitEvent',
  'ReadingSet',
  'Reading',
  'Waiver',
  'PlanVersion',
  'Estimate',
  'PlanAcceptance',
  'Release',
  'OutsidePromise',
  'SupplyPromise',
  'Payment',
  'PaymentVoid',
  'MoneyPaper',
  'MoneyPaperFile',
  'CallEntry',
  'Operation',
] as const

const verbs: Readonly<Record<Provider, readonly string[]>> = {
  sqlite: ['update', 'delete'],
  postgresql: ['update', 'delete', 'truncate'],
}

/** Example: `Reading_no_update`. */
const nameOf = (table: string, verb: string): string => `${table}_no_${verb}`

export const expectedTriggers = (provider: Provider): string[] =>
  [
    ...appendOnlyTables.flatMap((table) => verbs[provider].map((verb) => nameOf(table, verb))),
    ...findTriggers(provider),
  ].sort()

const postgresFunction = `CREATE OR REPLACE FUNCTION brasstag_append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only', TG_TABLE_NAME USING ERRCODE = 'integrity_constraint_violation';
END;
$$;`

const createTrigger: Readonly<Record<Provider, (table: string, verb: string) => string>> = {
  sqlite: (table, verb) => `DROP TRIGGER IF EXISTS "${nameOf(table, verb)}";
CREATE TRIGGER "${nameOf(table, verb)}" BEFORE ${verb.toUpperCase()} ON "${table}"
BEGIN SELECT RAISE(ABORT, '${table} is append-only'); END;`,
  postgresql: (table, verb) => `CREATE OR REPLACE TRIGGER "${nameOf(table, verb)}"
  BEFORE ${verb.toUpperCase()} ON "${table}"
  FOR EACH ${verb === 'truncate' ? 'STATEMENT' : 'ROW'} EXECUTE FUNCTION brasstag_append_only();`,
}

/** Puts every trigger there, whether or not it is there already. */
export const triggerScript = (provider: Provider): string =>
  [
    ...(provider === 'postgresql' ? [postgresFunction] : []),
    ...appendOnlyTables.flatMap((table) => verbs[provider].map((verb) => createTrigger[provider](table, verb))),
    findIndexScript(provider),
  ].join('\n')

export const listTriggers: Readonly<Record<Provider, string>> = {
  sqlite: `SELECT name FROM sqlite_master WHERE type = 'trigger' ORDER BY name`,
  // Only those of this schema that are switched on: a disabled trigger guards nothing.
  postgresql: `SELECT t.tgname AS name FROM pg_trigger t
    JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE NOT t.tgisinternal AND t.tgenabled = 'O' AND n.nspname = current_schema() ORDER BY t.tgname`,
}

export type RunQuery = (sql: string) => Promise<readonly { readonly name: string }[]>

export async function assertTriggers(provider: Provider, run: RunQuery): Promise<void> {
  const there = new Set((await run(listTriggers[provider])).map((row) => row.name))
  const missing = expectedTriggers(provider).filter((name) => !there.has(name))
  if (missing.length > 0) {
    throw new Error(
      `The database does not protect its history or keep its search index: ${missing.length} triggers are missing (${missing[0]} first). ` +
        'Start Brasstag with npm start or npm run shop, which brings the database up to date.',
    )
  }
}
