import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { auditActionOf, auditActions, storedAs } from '@/lib/core/audit/verbs'
import { must } from '@/lib/core/errors'
import type { StepId } from '@/lib/core/route/step-ids'
import { stepLabels } from '@/lib/core/route/steps'
import { tableOf } from '@/lib/core/route/table'
import { addDays, startOfDay } from '@/lib/core/shop/calendar'
import { db } from '@/lib/data/db'
import { currentRules } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { auditChanges } from '@/lib/data/stored/records'
import { trailEntries, trailNames, trailSearch, type TrailEntry } from '@/lib/data/trail'
import { auditText, plainSentence, type AuditManner } from '@/lib/words/audit'

export type TrailLine = {
  readonly seq: number
  readonly at: Date
  readonly by: string
  /** What was done: "Put the head on hold: bent stud". */
  readonly sentence: string
  /** What it was done to, where that has a name: a tag, a job number, a vendor. */
  readonly tag: string
  readonly jobNumber: string
  readonly name: string
  /** A line for each field that changed and is not in the sentence. */
  readonly changes: readonly string[]
}

export type Trail = {
  readonly zone: string
  readonly locale: string
  readonly people: readonly { readonly id: string; readonly name: string }[]
  readonly lines: readonly TrailLine[]
  /** Where the next page begins; null on the last. */
  readonly next: number | null
}

export type TrailAsked = {
  /** A tag, a job, a name or part of what was done; '': everything. */
  readonly find: string
  /** '': everybody. */
  readonly personId?: string
  /** Days of the calendar, both included; '': no limit. */
  readonly from?: string
  readonly to?: string
  /** Where a page begins; null: the newest. */
  readonly before: number | null
}

const pageSize = 50

/** The trail, newest first. */
export async function seeTrail(actor: Actor, asked: TrailAsked): Promise<Trail> {
  must(allow(actor, 'back-room.see'))
  const client = await db()
  const { timeZone: zone, locale, currency } = await shopOf(client)
  const found = await trailEntries(client, {
    search: asked.find.trim() === '' ? null : await trailSearch(client, asked.find),
    actions: actionsLike(asked.find),
    limits: {
      personId: asked.personId || null,
      from: asked.from ? startOfDay(zone, asked.from) : null,
      to: asked.to ? startOfDay(zone, addDays(asked.to, 1)) : null,
    },
    before: asked.before,
    take: pageSize + 1,
  })
  const entries = found.slice(0, pageSize)
  const { names, people } = await trailNames(client, entries, asked.personId || null)
  const table = tableOf(await currentRules(client))
  const stepName = (id: string): string =>
    id === 'flow' ? stepLabels.flow : (table.rowOf(id as Exclude<StepId, 'flow'>)?.label ?? '')
  const manner = { timeZone: zone, locale, currency, stepName }
  return {
    zone,
    locale,
    people,
    lines: entries.map((entry) => lineOf(entry, names, manner)),
    next: found.length > pageSize ? (entries.at(-1)?.seq ?? null) : null,
  }
}

/** Every action whose sentence, or whose code, has these words in it. */
function actionsLike(find: string): readonly string[] {
  const wanted = find.trim().toLowerCase()
  if (wanted === '') return []
  return auditActions
    .filter((action) =>
      [action, action.replaceAll(/[-.]/g, ' '), plainSentence(action).toLowerCase()].some((text) =>
        text.includes(wanted),
      ),
    )
    .flatMap(storedAs)
}

function lineOf(entry: TrailEntry, names: ReadonlyMap<string, string>, manner: AuditManner): TrailLine {
  const nameOf = (id: string | null): string => (id === null ? '' : (names.get(id) ?? ''))
  const changes = auditChanges.read(entry.changes, entry.seq)
  const action = auditActionOf({ action: entry.action, subject: entry.subject, changes })
  const name = entry.subject === 'step' ? manner.stepName(entry.subjectId) : nameOf(entry.subjectId)
  return {
    seq: entry.seq,
    at: entry.at,
    by: nameOf(entry.actorId),
    ...(action === null ? { sentence: entry.action, changes: [] } : auditText(action, name, changes, manner)),
    tag: nameOf(entry.visitId),
    jobNumber: nameOf(entry.jobId),
    name,
  }
}
