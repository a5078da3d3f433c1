import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { headName } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { taggedVisitsHere, type LabelVisit } from '@/lib/data/label-heads'
import { shopOf } from '@/lib/data/shop'
import { headsByTag } from './heads-by-tag'
import { castingWords, sideWords } from '@/lib/dossier/spec/spec-words'

export type LabelHead = {
  readonly tag: string
  readonly jobNumber: string
  /** Casting and side, in words. */
  readonly what: string
  /** The shop's day on which it was checked in, or on which its tag was hung while it is still to be. */
  readonly on: string
  readonly checkedIn: boolean
  readonly today: boolean
}

export type LabelHeads = {
  /** Those that are here and wear a tag: the newest arrival first. */
  readonly heads: readonly LabelHead[]
  /** Whether another page follows. */
  readonly more: boolean
  /** Those asked for by tag that are not among them. */
  readonly added: readonly LabelHead[]
  /** Every number asked for, with the tag that its head wears now. */
  readonly asked: readonly { readonly number: string; readonly tag: string }[]
  /** What was asked for and has no label: as typed, with why. */
  readonly without: readonly string[]
  readonly locale: string
}

/** The heads that tag labels may be wanted for, and those asked for by their tags. */
export async function seeLabelHeads(
  actor: Actor,
  { tags, page = 1 }: { tags: readonly string[]; page?: number },
  now: Date,
): Promise<LabelHeads> {
  must(allow(actor, 'paper.print'))
  const client = await db()
  const { timeZone, locale } = await shopOf(client)
  const visits = await taggedVisitsHere(client, page)
  const asked = await headsByTag(client, tags)
  const day = (at: Date) => dayIn(timeZone, at)
  const listed = visits.rows.toSorted((a, b) => since(b).getTime() - since(a).getTime())
  const added = asked.visits.filter(({ headId }) => !listed.some((visit) => visit.headId === headId))
  const line = (visit: LabelVisit) => labelHead(visit, day, day(now))
  return {
    heads: listed.map(line),
    more: visits.more,
    added: added.filter(isWorn).map(line),
    asked: asked.found.flatMap(({ number, visit }) => (isWorn(visit) ? [{ number, tag: nameOf(visit) }] : [])),
    without: [
      ...asked.unknown.map((text) => `Tag not found: ${text}.`),
      ...added
        .filter((visit) => !isWorn(visit))
        .map((visit) => `${nameOf(visit)} was removed and the head has no tag.`),
    ],
    locale,
  }
}

const nameOf = ({ head, job, position }: LabelVisit): string => headName(head.tags, job.number, position)

const isWorn = ({ head }: LabelVisit): boolean => head.tags.some(({ to }) => to === null)

/** When it came in: its check-in, else the hanging of the tag it wears. */
const since = ({ checkedInAt, head }: LabelVisit): Date =>
  checkedInAt ?? head.tags.find(({ to }) => to === null)?.from ?? new Date(0)

function labelHead(visit: LabelVisit, day: (at: Date) => string, today: string): LabelHead {
  const on = day(since(visit))
  return {
    tag: nameOf(visit),
    jobNumber: visit.job.number,
    what: [castingWords({ visit }), sideWords(visit.side)].filter((part) => part !== '').join(', '),
    on,
    checkedIn: visit.checkedInAt !== null,
    today: on === today,
  }
}
