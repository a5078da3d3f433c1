import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { completeness, completenessWarnings } from '@/lib/core/route/completeness'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { db, type Reader } from '@/lib/data/db'
import { namesOf } from '@/lib/data/people'
import { accountOf } from '@/lib/data/prices'
import { specOfRelease } from '@/lib/data/releases'
import { shopOf } from '@/lib/data/shop'
import type { PrintSetting } from '@/lib/pdf/print-setting'
import { loadDossiers, noSuchHead, type Dossier } from '@/lib/dossier/dossier'
import { confirmedCautions } from '@/lib/dossier/confirmed'
import { mateCorners, matesIn } from '@/lib/dossier/of-mates'
import { printSetting } from '@/lib/papers/print-spec'
import { valuedAt } from '@/lib/dossier/reading-text'
import { specSheetOf } from '@/lib/dossier/spec/spec-sheet-of'
import { finishedCautions } from '@/lib/dossier/finished-checks'
import { mayRelease } from './may-release'
import { finishedCautionText } from '@/lib/words/finished'
import { lackText } from '@/lib/words/lacks'
import { releaseWarningText } from '@/lib/words/ticks'

export type ReleaseDraft = {
  readonly version: number
  readonly revision: number
  readonly spec: SpecSheetData
  readonly setting: PrintSetting
  readonly warnings: readonly string[]
}

/** What a release would freeze; refused when it may not be released. */
export async function releaseDraft(
  actor: Actor,
  { visitId, reason }: { visitId: string; reason: string },
  now: Date,
): Promise<ReleaseDraft> {
  const client = await db()
  const heads = await loadDossiers(client, { pairsOf: [visitId] })
  const head = heads.find(({ visit }) => visit.id === visitId) ?? noSuchHead()
  const { visit } = head
  must(mayRelease(head, reason))
  const revision = (visit.releases[0]?.revision ?? 0) + 1
  const shop = await shopOf(client)
  const names = await namesOf(visit.waivers.map((waiver) => waiver.byId))
  const out = revision === 1 ? [] : completeness(head.facts).map((gap) => `As corrected: ${lackText(gap.lack)}.`)
  const end = {
    revision,
    revisionReason: revision === 1 ? '' : reason,
    ...earlierOf(visit),
    outcome: 'released' as const,
    releasedBy: actor.name,
    notDone: [],
    notes: out,
    at: now,
  }
  return {
    version: visit.version,
    revision,
    spec: specSheetOf(head, shop, end, (id) => names.get(id) ?? ''),
    setting: printSetting(shop, now),
    warnings: await warningsOf(client, head, matesIn(heads, head)),
  }
}

/** The sheets that were released before, the first one first; a head's first sheet says nothing of any. */
function earlierOf({ releases }: Dossier['visit']): Pick<SpecSheetData, 'earlier'> {
  if (releases.length === 0) return {}
  const earlier = releases.toReversed().map((release) => {
    const { revision, revisionReason, releasedBy, releasedAt } = specOfRelease(release)
    return { revision, reason: revisionReason, releasedBy, releasedAt }
  })
  return { earlier }
}

/** What the owner should know and may pass over. */
async function warningsOf(client: Reader, head: Dossier, mates: readonly Dossier[]): Promise<string[]> {
  const { visit, facts } = head
  const open = mates.filter(
    (mate) => mate.visit.releases.length === 0 && mate.visit.returned === null && completeness(mate.facts).length > 0,
  )
  const mateCc = mates.flatMap((mate) => valuedAt(mate.newest, 'finished', 'cc').map(({ value }) => value))
  const due = (await accountOf(client, visit.jobId)).dueMinor
  return [
    ...open.map((mate) => `Its mate ${mate.label} is not ready.`),
    ...completenessWarnings(facts, { mateCc }).map(releaseWarningText),
    ...finishedCautions(head.readings, {
      mates: mateCorners(mates),
      pairThicknessIn: facts.settings.pairThicknessIn,
      finishAsked: visit.job.finishAsked,
    }).map((caution) => `${finishedCautionText(caution)}.`),
    ...confirmedCautions(head),
    ...(due > 0 ? ['The job is not paid in full.'] : []),
  ]
}
