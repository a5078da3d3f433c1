import 'server-only'
import { parseTag, tagText } from '@/lib/core/shop/tag-number'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { anywhereRange, beginsWith, distinctBy } from './text-range'

const knownSelect = {
  id: true,
  stamp: true,
  marks: true,
  castingId: true,
  casting: { select: { name: true } },
  tags: { orderBy: { from: 'desc' }, select: { number: true, to: true } },
  visits: {
    orderBy: { createdAt: 'desc' },
    take: 1,
    select: {
      id: true,
      place: { select: { whereabouts: true } },
      job: { select: { number: true, customer: { select: { contact: { select: { name: true } } } } } },
    },
  },
} as const satisfies Prisma.HeadSelect

export type KnownHead = Prisma.HeadGetPayload<{ select: typeof knownSelect }>

export async function knownHeads(reader: Reader, ids: readonly string[]): Promise<Map<string, KnownHead>> {
  const heads = await reader.head.findMany({ where: { id: { in: [...ids] } }, select: knownSelect })
  return new Map(heads.map((head) => [head.id, head]))
}

/** Heads that wear or wore this tag (typed, or as the link a scanner reads), the newest wearer first. */
export async function headsWithTag(reader: Reader, text: string, take: number): Promise<KnownHead[]> {
  const tag = parseTag(tagText(text))
  if (!tag.ok) return []
  const worn = await reader.tagAssignment.findMany({
    where: { number: tag.value.number },
    orderBy: { from: 'desc' },
    take,
    select: { head: { select: knownSelect } },
  })
  return worn.map(({ head }) => head)
}

/** Heads whose tag begins so first, then those with the text anywhere in their own stamp or casting marks. */
export async function headsLike(reader: Reader, text: string, take: number): Promise<KnownHead[]> {
  const worn = await reader.tagAssignment.findMany({
    where: { number: beginsWith(text.trim().toUpperCase()) },
    orderBy: { from: 'desc' },
    take,
    select: { head: { select: knownSelect } },
  })
  const marked = await headsMarked(reader, text.trim().toLowerCase(), take)
  return distinctBy([...worn.map(({ head }) => head), ...marked], (head) => head.id).slice(0, take)
}

/** A common part is on many heads; the first so many endings are looked at. */
const mostEndings = 400

async function headsMarked(reader: Reader, part: string, take: number): Promise<KnownHead[]> {
  const rows = await reader.headSuffix.findMany({
    where: { suffix: anywhereRange(part) },
    select: { headId: true },
    orderBy: { suffix: 'asc' },
    take: mostEndings,
  })
  const ids = [...new Set(rows.map(({ headId }) => headId))]
  // Ids are made in the order of time: the newest heads first.
  const heads = await knownHeads(reader, ids.toSorted().reverse().slice(0, take))
  return [...heads.values()].toSorted((a, b) => (a.id < b.id ? 1 : -1))
}
