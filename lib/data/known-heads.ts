import 'server-only'
import { parseTag, tagText } from '@/lib/core/shop/tag-number'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { beginsWith, distinctBy } from './text-range'

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
  const marked = await reader.head.findMany({
    where: { marksLower: { contains: text.trim().toLowerCase() } },
    orderBy: { createdAt: 'desc' },
    take,
    select: knownSelect,
  })
  return distinctBy([...worn.map(({ head }) => head), ...marked], (head) => head.id).slice(0, take)
}
