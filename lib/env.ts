import { join, resolve } from 'node:path'
import { z } from 'zod'

const filled = (value: unknown) => (value === '' ? undefined : value)
const optional = <T extends z.ZodType>(kind: T) => z.preprocess(filled, kind.optional())

const databaseUrl = z
  .string()
  .regex(/^(postgres|postgresql|file):/, 'must start with postgres://, postgresql:// or file:')

const storeSchema = z.object({
  /** The folder that holds everything of one shop: the database, files, secret. */
  // The folder is the shop's choice at run time: the bundler is not to look for it.
  BRASSTAG_DATA: optional(z.string()).transform((folder) => resolve(/* turbopackIgnore: true */ folder ?? 'data')),
  DATABASE_URL: optional(databaseUrl),
  /** A second folder that has a copy of each backup: a stick, a share. */
  BRASSTAG_BACKUP_TO: optional(z.string()),
})

const webSchema = storeSchema.extend({
  /** Signs the session tokens. `npm start` makes it once and keeps it in the data folder. */
  NEXTAUTH_SECRET: z.string().min(32, 'must be at least 32 characters'),
  NEXTAUTH_URL: optional(z.url()),
  /** The address that people and QR codes use, where it differs from the one the server listens on. */
  BRASSTAG_URL: optional(z.url()),
  /** Addresses of the shop's own proxies, by commas: only what they say of who asks is believed. */
  BRASSTAG_PROXIES: optional(z.string()),
})

/** Parsed once for as long as the variables it names stay as they were. */
function parsedOnce<T>(schema: z.ZodObject & z.ZodType<T>): () => T {
  const names = Object.keys(schema.shape)
  let kept: { readonly from: string; readonly value: T } | undefined
  return () => {
    const given = Object.fromEntries(names.map((name) => [name, process.env[name]]))
    const from = JSON.stringify(given)
    if (kept?.from !== from) kept = { from, value: parse(schema, given) }
    return kept.value
  }
}

function parse<T>(schema: z.ZodType<T>, given: Readonly<Record<string, string | undefined>>): T {
  const parsed = schema.safeParse(given)
  if (parsed.success) return parsed.data
  // Names and rules only: a value here may be a secret.
  const problems = parsed.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`)
  throw new Error(`The environment is not right: ${problems.join('; ')}.`)
}

/** Where the data is: enough for everything that does not answer to browsers. */
export const storeEnv = parsedOnce(storeSchema)

/** What the web server needs. */
export const env = parsedOnce(webSchema)

export const dataFolder = (): string => storeEnv().BRASSTAG_DATA

/** The database of this process: PostgreSQL when DATABASE_URL says so, else the file in the data folder. */
export const databaseUrlOfProcess = (): string => storeEnv().DATABASE_URL ?? `file:${join(dataFolder(), 'brasstag.db')}`
