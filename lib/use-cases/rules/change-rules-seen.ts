import { createHash } from 'node:crypto'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { changeRules as changed } from '@/lib/core/route/change-rules'
import { computeRoute } from '@/lib/core/route/compute-route'
import type { RouteRules } from '@/lib/core/route/rules'
import { checkRules } from '@/lib/core/route/rules-check'
import { rulesChanges, stationName } from '@/lib/core/route/rules-words'
import { walks } from '@/lib/core/route/walk'
import { workTakenAway } from '@/lib/core/route/work-taken-away'
import { db, type Reader } from '@/lib/data/db'
import { openVisitIds } from '@/lib/data/open-visits'
import { currentSettings, settingsAt } from '@/lib/data/settings'
import type { Moment } from '@/lib/data/write'
import { dossierOf, loadDossiers } from '@/lib/dossier/dossier'
import type { ChangeRules, RestoreRules, SeenChange } from '@/lib/schemas/rules'
import { routeChanges } from '@/lib/words/route-changes'
import { rulesFaultText } from '@/lib/words/rules-faults'
import { changeRules } from './change-rules'

export type Affected = { readonly name: string; readonly changes: readonly string[] }

export type ChangeShown = {
  /** Stands for this change of these tables; sent back when it is to be made. */
  readonly seen: string
  /** What changes in the tables, old and new side by side in a line each. */
  readonly lines: readonly string[]
  /** Steps that heads get less often, or that ask for less: then a reason is needed. */
  readonly takesAway: readonly string[]
  /** A trial head of each kind whose route changes. */
  readonly trials: readonly Affected[]
  /** Heads in house whose route would change if the owner lets them follow, and how many were looked at. */
  readonly heads: readonly Affected[]
  readonly looked: number
  readonly inHouse: number
}

export type ChangeAnswer =
  { readonly kind: 'shown'; readonly shown: ChangeShown } | { readonly kind: 'made'; readonly version: number }

/** Heads that are looked at before a change: as many as a page can show. */
const mostHeads = 100

/** Shows what a change of the tables does before it makes it: the first sending shows, the second makes it. */
export async function changeRulesSeen(actor: Actor, input: SeenChange, moment: Moment): Promise<ChangeAnswer> {
  must(allow(actor, 'settings.change'))
  const shown = await showChange(await db(), input)
  if (input.seen !== shown.seen) return { kind: 'shown', shown }
  if (shown.takesAway.length > 0 && input.reason === '') {
    const message = 'This takes work away. Enter the reason.'
    throw new RefusedError({ code: 'invalid', message, fields: { reason: message } })
  }
  return { kind: 'made', ...(await changeRules(actor, input, moment)) }
}

/** Makes the tables what they were under an earlier version, shown first like any change. */
export async function restoreRules(
  actor: Actor,
  { version, to, reason, seen }: RestoreRules,
  moment: Moment,
): Promise<ChangeAnswer> {
  must(allow(actor, 'settings.change'))
  const then = (await settingsAt(await db(), to)).values.rules
  return changeRulesSeen(actor, { version, change: { kind: 'restore', then }, reason, seen }, moment)
}

async function showChange(reader: Reader, { version, change }: ChangeRules): Promise<ChangeShown> {
  const before = (await currentSettings(reader)).values.rules
  const after = changed(before, change)
  const fault = checkRules(after)
  if (fault) throw new RefusedError({ code: 'invalid', message: rulesFaultText(fault) })
  const ids = await openVisitIds(reader, {})
  return {
    seen: createHash('sha256')
      .update(JSON.stringify([version, after]))
      .digest('hex'),
    lines: rulesChanges(before, after),
    takesAway: workTakenAway(before, after),
    trials: trialsOf(before, after),
    heads: await headsOf(reader, ids.slice(0, mostHeads), after),
    looked: Math.min(ids.length, mostHeads),
    inHouse: ids.length,
  }
}

const named = (rules: RouteRules) => (station: Parameters<typeof stationName>[0]) => stationName(station, rules)

function trialsOf(before: RouteRules, after: RouteRules): Affected[] {
  const now = walks(after)
  return walks(before).flatMap(({ name, facts }, at) => {
    const then = now[at]
    const changes = then ? routeChanges(computeRoute(facts), computeRoute(then.facts), named(after)) : []
    return changes.length === 0 ? [] : [{ name: `A head with ${name}`, changes }]
  })
}

/** By the limits of the day each head was booked: only what the tables change is shown. */
async function headsOf(reader: Reader, ids: readonly string[], after: RouteRules): Promise<Affected[]> {
  const dossiers = await loadDossiers(reader, { ids })
  return dossiers.flatMap((dossier) => {
    const { visit, label, settings, today, route } = dossier
    const then = dossierOf(visit, { ...settings, rules: after }, today, dossier).route
    const changes = routeChanges(route, then, named(after))
    return changes.length === 0 ? [] : [{ name: `${label}, job ${visit.job.number}`, changes }]
  })
}
