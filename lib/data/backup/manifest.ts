import { z } from 'zod'
import { backupKinds } from '@/lib/core/backup/keep'

const hashed = z.object({ sha256: z.string().regex(/^[0-9a-f]{64}$/), size: z.number().int().nonnegative() })

/** The first file in a backup: what the others must be. */
export const manifestSchema = z.object({
  format: z.literal(1),
  madeAt: z.iso.datetime(),
  kind: z.enum(backupKinds),
  /** What the database was made for; null when nothing was in it yet. */
  mode: z.enum(['demo', 'shop']).nullable(),
  /** The newest migration that the database has had. */
  schema: z.string(),
  database: hashed,
  /** What signs the sessions and seals the mail server's password; null where the shop is given it by its environment. */
  secret: hashed.nullable(),
  /** Rows of each table. */
  counts: z.record(z.string(), z.number().int()),
  newestAudit: z.object({ seq: z.number().int(), at: z.string() }).nullable(),
  /** Photos, logo, papers: how many the database points at. */
  files: z.number().int(),
})
export type Manifest = z.infer<typeof manifestSchema>

/** The last file in a backup: files that the database points at and that were not whole in the shop itself. */
export const leftOutSchema = z.object({ files: z.array(z.string()) })

/** Names of what stands in a backup, and nothing else may stand in it. */
export const parts = {
  manifest: 'manifest.json',
  database: 'brasstag.db',
  secret: 'session-secret',
  leftOut: 'left-out.json',
} as const

export const filePart = (sha256: string): string => `files/${sha256.slice(0, 2)}/${sha256}`
/** The hash of a file's part; null: not the name of a file. */
export const hashOfPart = (name: string): string | null => {
  const hash = /^files\/[0-9a-f]{2}\/([0-9a-f]{64})$/.exec(name)?.[1]
  return hash !== undefined && filePart(hash) === name ? hash : null
}
