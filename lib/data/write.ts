import 'server-only'
import { setTimeout as pause } from 'node:timers/promises'
import type { Actor } from '@/lib/core/access/roles'
import { subjectOf, type AuditAction } from '@/lib/core/audit/verbs'
import { RefusedError } from '@/lib/core/errors'
import { db, type Db, type Reader, type Tx } from './db'
import { faultGone } from './fault-seen'
import { faultOf } from './faults'
import { currentSettings } from './settings'
import { auditChanges, operationResult } from './stored/records'

/** When something happens, and the operation that carries it (so that a retry has no second effect). */
export type Moment = { readonly now: Date; readonly op?: Operation }
export type Operation = { readonly id: string; readonly hash: string }

export type AuditLine = {
  readonly action: AuditAction
  /** The id of what the action's first word names. */
  readonly subjectId: string
  readonly jobId?: string
  readonly visitId?: string
  /** Changed fields and values. Never a customer's contact data. */
  readonly changes?: Readonly<Record<string, unknown>>
}

/**
 * Who a change is put down to: somebody signed in, whoever holds a customer's link, of whom only the link is known, what
 * the server does by itself, or what a command at the shop's computer did, whoever typed it.
 */
export type Author = Actor | { readonly linkId: string } | { readonly service: 'mail' | 'console' }

/** What stands in a row for whoever did it. */
export function authorId(author: Author): string {
  if ('service' in author) return author.service
  return 'linkId' in author ? author.linkId : author.personId
}

/** `Write` alone is a change by somebody signed in. */
export type Write<A extends Author = Actor> = {
  readonly tx: Tx
  readonly now: Date
  readonly actor: A
  readonly settingsVersion: number
  readonly audit: (line: AuditLine) => void
}

/** The same operation, sent twice at once: what the first one did may be what the second is refused for. */
const mayBeDone = (error: unknown): boolean => faultOf(error) === 'taken' || error instanceof RefusedError

/**
 * Worth another try: the change was undone because another one met it. Where the connection broke it may also have been
 * done, which only its operation tells.
 */
function mayTryAgain(error: unknown, { op }: Moment): boolean {
  const fault = faultOf(error)
  return fault === 'met' || fault === 'taken' || (fault === 'away' && op !== undefined)
}

const tries = 3
/** Longer each time, and not the same for two that met. */
const pauseMs = (attempt: number): number => 40 * attempt * (1 + Math.random())

/**
 * One change: its rows, its audit entries and its operation in one transaction. The same operation again gives the
 * stored answer; the same id with other content is refused. `work` awaits nothing but the database, and is begun anew
 * where another change met it.
 */
export async function write<T, A extends Author = Actor>(
  actor: A,
  moment: Moment,
  work: (ctx: Write<A>) => Promise<T>,
): Promise<T> {
  return writeTo(await db(), actor, moment, work)
}

/** The same in a database that is named: one that is not the shop's yet. */
export async function writeTo<T, A extends Author>(
  client: Db,
  actor: A,
  moment: Moment,
  work: (ctx: Write<A>) => Promise<T>,
): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      const result = await writeOrStored(client, actor, moment, work)
      faultGone()
      return result
    } catch (error) {
      if (attempt === tries || !mayTryAgain(error, moment)) throw error
      await pause(pauseMs(attempt))
    }
  }
}

async function writeOrStored<T, A extends Author>(
  client: Db,
  actor: A,
  moment: Moment,
  work: (ctx: Write<A>) => Promise<T>,
): Promise<T> {
  try {
    return await client.$transaction((tx) => writeOnce(tx, actor, moment, work), { timeout: 20_000, maxWait: 20_000 })
  } catch (error) {
    const stored = mayBeDone(error) ? await storedAnswer<T>(client, actor, moment.op) : null
    if (stored) return stored.result
    throw error
  }
}

async function writeOnce<T, A extends Author>(
  tx: Tx,
  actor: A,
  moment: Moment,
  work: (ctx: Write<A>) => Promise<T>,
): Promise<T> {
  const stored = await storedAnswer<T>(tx, actor, moment.op)
  if (stored) return stored.result
  const settings = await currentSettings(tx)
  const lines: AuditLine[] = []
  const result = await work({
    tx,
    now: moment.now,
    actor,
    settingsVersion: settings.version,
    audit: (line) => lines.push(line),
  })
  await tx.auditEntry.createMany({
    data: lines.map((line) => ({
      at: moment.now,
      actorId: authorId(actor),
      action: line.action,
      subject: subjectOf(line.action),
      subjectId: line.subjectId,
      jobId: line.jobId ?? null,
      visitId: line.visitId ?? null,
      changes: auditChanges.write(line.changes ?? {}),
      settingsVersion: settings.version,
      operationId: moment.op?.id ?? null,
    })),
  })
  if (moment.op) {
    await tx.operation.create({
      data: {
        id: moment.op.id,
        actorId: authorId(actor),
        hash: moment.op.hash,
        result: operationResult.write(result ?? null),
        at: moment.now,
      },
    })
  }
  return result
}

async function storedAnswer<T>(reader: Tx, actor: Author, op: Operation | undefined) {
  if (!op) return null
  const row = await reader.operation.findUnique({ where: { id: op.id } })
  if (!row) return null
  if (row.hash !== op.hash || row.actorId !== authorId(actor)) {
    throw new RefusedError({
      code: 'operation-reused',
      message: 'This was already sent with other content. Nothing was changed; look at the page again before sending.',
    })
  }
  // The hash holds the name of the deed and what was asked: this is what the same deed answered.
  return { result: operationResult.read(row.result, row.id) as T }
}

/** What this person's operation answered; null: it was not carried out. */
export async function answerOfOperation(reader: Reader, { personId }: Actor, id: string): Promise<unknown> {
  const row = await reader.operation.findFirst({ where: { id, actorId: personId } })
  return row ? operationResult.read(row.result, row.id) : null
}

/** Zero rows changed by a versioned update: somebody else was first. */
export function conflictUnless(changed: { count: number }, what: string): void {
  if (changed.count === 0) {
    throw new RefusedError({
      code: 'conflict',
      message: `Somebody else changed ${what} first. Look at what it says now, then decide.`,
    })
  }
}
