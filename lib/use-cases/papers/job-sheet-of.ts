import { workLabel } from '@/lib/core/route/presets'
import { progress } from '@/lib/core/route/progress'
import type { StepId, WorkId } from '@/lib/core/route/step-ids'
import type { SecondCheckNeed } from '@/lib/core/route/codes'
import { secondCheckNeeded } from '@/lib/core/route/second-check'
import { stepLabel } from '@/lib/core/route/table'
import type { Figure } from '@/lib/core/spec/spec-sheet'
import type { JobSheetData, JobSheetHead } from '@/lib/pdf/job-sheet'
import type { NextPass } from '@/lib/dossier/next-pass'
import { declinedOf } from '@/lib/dossier/declined'
import { headDrawing } from '@/lib/dossier/head-drawing'
import { jobSteps } from './job-steps'
import { addressBlock } from '@/lib/dossier/shop-block'
import { stopLines } from '@/lib/dossier/stop-banner'
import type { Dossier } from '@/lib/dossier/dossier'
import { planFigures, planNotes, planTitleOf } from './plan-figures'
import { secondCheckLines } from '@/lib/dossier/second-check'
import { cutCautionText } from '@/lib/words/cut-cautions'
import { secondCheckText } from '@/lib/words/second-check'
import { readAt } from '@/lib/dossier/reading-text'
import { addressWarning, qrTextOf } from './tag-address'
import type { SpecShop } from '@/lib/dossier/spec/spec-sheet-of'
import { askedWords, castingWords, engineWords, marksWords, sideWords } from '@/lib/dossier/spec/spec-words'
import { dateWords, dayWords } from '@/lib/core/shop/when-words'

type Job = {
  readonly number: string
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly note: string
  readonly customer: { readonly contact: { readonly name: string; readonly phone: string } | null }
  readonly engine: Dossier['visit']['job']['engine']
}

/** Everything the job sheet says: the heads may go a day on it without the network. */
export function jobSheetOf(
  job: Job,
  heads: readonly Dossier[],
  shop: SpecShop,
  nameOf: (personId: string) => string,
  passOf: (visitId: string) => NextPass | null,
): JobSheetData {
  return {
    language: shop.locale,
    shop: addressBlock(shop),
    jobNumber: job.number,
    customer: job.customer.contact?.name ?? '',
    phone: job.customer.contact?.phone ?? '',
    promised: dayWords(job.promiseOn, shop),
    urgency: job.urgent ? 'urgent' : '',
    engine: engineWords(job.engine),
    notes: job.note,
    addressWarning: addressWarning(),
    heads: heads.map((head) => jobHead(head, shop, nameOf, passOf(head.visit.id))),
  }
}

/** What was written beside a line when it was ordered: for the bench, not for the customer. */
const orderNotes = ({ visit, settings }: Dossier): string[] =>
  visit.ordered
    .filter((line) => line.endedAt === null && line.note !== '')
    .map((line) => `${workLabel(line.work as WorkId, settings.rules)}: ${line.note}`)

function jobHead(head: Dossier, shop: SpecShop, nameOf: (id: string) => string, pass: NextPass | null): JobSheetHead {
  const { visit, facts } = head
  const stop = stopLines(head, shop)
  const live = stop.length === 0
  const cameWith = readAt(head.newest, 'check-in', 'came-with').at(-1)?.text ?? visit.cameWith
  return {
    tag: head.label,
    revision: visit.version,
    qrText: qrTextOf(head.label),
    casting: castingWords(head),
    marks: marksWords(head),
    side: sideWords(visit.side),
    place: visit.rackPlace,
    pairTags: head.mates.map(({ label }) => label),
    cameWith,
    ordered: [...originWords(head), ...askedWords(head), ...orderNotes(head)],
    stop,
    planTitle: live
      ? `${planTitleOf(head)}${checksOf(head).length > 0 ? ': second check first' : ''}`
      : 'Do not work on this head',
    planFigures: live ? [...passFigures(pass), ...planFigures(head, passFigures(pass).length > 0)] : [],
    planNotes: [
      ...(live ? [...checkNotes(head), ...stopNotes(pass), ...planNotes(head)] : []),
      ...secondCheckLines(head, nameOf, shop),
    ],
    waiting: live ? waitingWords(head) : [],
    drawing: headDrawing(head),
    graduations: progress(head.route, facts.openHolds.length > 0),
    steps: jobSteps(head, live, pass),
    findings: findingsOf(visit),
    cautions: (head.plan?.cautions ?? []).map(cutCautionText),
    declined: declinedOf(head, shop).map(({ what, how }) => [what, how].filter(Boolean).join(', ')),
    waivers: visit.waivers.map(
      ({ what, reason, byId, at }) => `${what}: ${reason} (${nameOf(byId)}, ${dateWords(at, shop)})`,
    ),
  }
}

/** What was seen and not ordered: agreed, or still without an answer. What was declined has its own list. */
const findingsOf = ({ findings }: Dossier['visit']): string[] =>
  findings
    .filter(({ answer }) => answer !== 'no')
    .map(({ what, answer, askedAt }) => {
      const seen = what.replace(/[.\s]+$/, '')
      if (answer === 'yes') return `Agreed, do it: ${seen}`
      return `Do not start, ${askedAt ? 'asked, no answer yet' : 'not asked yet'}: ${seen}`
    })

/**
 * The mill's figures as they are now, one unit a line: where to stop, what is off already, what is left. The screen gives
 * the next stop from what the chamber reads.
 */
function passFigures(pass: NextPass | null): Figure[] {
  if (!pass || pass.stopAtThou === null) return []
  const { stopAtThou, thisPassThou, then } = pass
  const thou = (label: string, value: number, note = ''): Figure => ({
    label,
    value: value.toFixed(1),
    unit: 'thou',
    note,
  })
  return [
    thou('Stop at, from the first touch-off', stopAtThou, then),
    ...(thisPassThou === null
      ? []
      : [thou('Off already', stopAtThou - thisPassThou), thou('Left to that stop', thisPassThou)]),
  ]
}

/** The cuts that a second person has not looked at yet. */
const checksOf = ({ facts, route }: Dossier): SecondCheckNeed[] =>
  route
    .filter(({ state }) => state !== 'done' && state !== 'waived' && state !== 'not needed')
    .flatMap((step) => secondCheckNeeded(facts, step) ?? [])

/** Nobody cuts by a sheet before that. */
const checkNotes = (head: Dossier): string[] =>
  checksOf(head).map((need) => `${secondCheckText(need)} Name: __________ Chamber: ____ cc: ______`)

const stopNotes = (pass: NextPass | null): string[] => (!pass || pass.why === '' ? [] : [pass.why])

const origins: Readonly<Record<string, string>> = {
  bought: 'Bought by the shop for this job',
  'bought-cut': 'Bought by the shop, already cut by its maker',
}

/** Where the head comes from, where that changes how it is worked on: bought, or back after an earlier visit. */
function originWords({ visit }: Dossier): string[] {
  const { source, comebackOfId, comebackCause, comebackPays } = visit
  const comeback =
    comebackOfId === null
      ? ''
      : ['Comeback', comebackCause && `cause: ${comebackCause}`, comebackPays && `paid by: ${comebackPays}`]
          .filter((part) => part !== '')
          .join(', ')
  return [origins[source] ?? '', comeback].filter((line) => line !== '')
}

/** Parts that a step waits for. */
const waitingWords = ({ visit, settings }: Dossier): string[] =>
  visit.waits
    .filter(({ arrivedAt }) => arrivedAt === null)
    .map(({ stepId, what }) => `${stepLabel(stepId as StepId, settings.rules)} waits for ${what}`)
