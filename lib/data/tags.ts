import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { tagOf, type TagNumber } from '@/lib/core/shop/tag-number'
import type { Reader, Tx } from './db'
import { nextNumber } from './counters'
import { newId } from './ids'
import type { Write } from './write'

const firstTag = 401

/** The next number of the shop's series that was never on a head: typed numbers may run ahead of the counter. */
async function nextTag(tx: Tx): Promise<TagNumber> {
  for (;;) {
    const sortNumber = await nextNumber(tx, 'tag', firstTag)
    const number = tagOf(sortNumber)
    if (!(await tx.tagAssignment.findFirst({ where: { number }, select: { id: true } }))) return { number, sortNumber }
  }
}

/** The number that the next head without one of its own would get: to be shown, not taken. */
export async function proposedTag(reader: Reader): Promise<string> {
  const row = await reader.counter.findUnique({ where: { name: 'tag' } })
  return tagOf(await firstFree(reader, row ? row.value + 1 : firstTag))
}

const atOnce = 200

/** The first number from here on that no tag of the series has; numbers that were typed may fill a long stretch. */
async function firstFree(reader: Reader, from: number): Promise<number> {
  const ahead = await reader.tagAssignment.findMany({
    where: { number: { startsWith: 'T-' }, sortNumber: { gte: from } },
    orderBy: { sortNumber: 'asc' },
    take: atOnce,
    select: { sortNumber: true },
  })
  const taken = new Set(ahead.map(({ sortNumber }) => sortNumber))
  let free = from
  while (taken.has(free)) free += 1
  const last = ahead.at(-1)?.sortNumber
  return ahead.length === atOnce && last !== undefined && free === last + 1 ? firstFree(reader, free) : free
}

/** Where a tag hangs now: the head and the newest job it is on. */
async function holderOf(tx: Tx, number: string) {
  return tx.tagAssignment.findUnique({
    where: { activeNumber: number },
    select: {
      headId: true,
      head: {
        select: {
          visits: { orderBy: { createdAt: 'desc' }, take: 1, select: { job: { select: { number: true } } } },
        },
      },
    },
  })
}

/**
 * Hangs a tag on a head: the typed number, else the one it still wears, else the next of the series. A number hangs on
 * one head at a time; `field` names the form field that a clash is shown at. With `another` the one it wears comes off
 * even when none is typed.
 */
export async function assignTag(
  ctx: Write,
  headId: string,
  typed: TagNumber | null,
  field: string,
  { another = false }: { readonly another?: boolean } = {},
): Promise<string> {
  const worn = await ctx.tx.tagAssignment.findFirst({ where: { headId, to: null } })
  if (worn && (typed === null ? !another : typed.number === worn.number)) return worn.number
  const holder = typed && (await holderOf(ctx.tx, typed.number))
  if (typed && holder) refuseTaken(typed.number, holder, field)
  if (worn) await takeOffTag(ctx, headId)
  const tag = typed ?? (await nextTag(ctx.tx))
  await ctx.tx.tagAssignment.create({
    data: { id: newId(ctx.now), headId, ...tag, activeNumber: tag.number, from: ctx.now, to: null },
  })
  return tag.number
}

type Holder = NonNullable<Awaited<ReturnType<typeof holderOf>>>

function refuseTaken(number: string, { headId, head }: Holder, field: string): never {
  const job = head.visits[0]?.job.number
  const message = `Tag ${number} hangs on another head${job ? ` (job ${job})` : ''}. Type another, or leave it empty for the next number.`
  throw new RefusedError({
    code: 'invalid',
    message,
    fields: { [field]: message },
    gaps: [{ message: `Head with tag ${number}`, href: `/heads/${headId}` }],
  })
}

/** The tag comes off the head and may be used again; the old assignment still finds it. */
export async function takeOffTag(ctx: Write, headId: string): Promise<void> {
  await ctx.tx.tagAssignment.updateMany({ where: { headId, to: null }, data: { activeNumber: null, to: ctx.now } })
}

/** The tag that a head wears; null: none. */
export async function wornTag(reader: Reader, headId: string): Promise<string | null> {
  const head = await reader.head.findUnique({
    where: { id: headId },
    select: { tags: { where: { to: null }, select: { number: true } } },
  })
  if (!head) throw new RefusedError({ code: 'not-found', message: 'Head not found.' })
  return head.tags[0]?.number ?? null
}
