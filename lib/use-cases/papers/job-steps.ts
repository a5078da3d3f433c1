import { readsAtBench } from '@/lib/core/at-mill/reads-to-come'
import { shopRepeatability } from '@/lib/core/chamber/burette'
import { isMillPoint, millStops } from '@/lib/core/chamber/mill-point'
import { pointLabel } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import { placesOf } from '@/lib/core/readings/valves'
import { isValveKind } from '@/lib/core/readings/valve-kinds'
import { keyText, sameKey } from '@/lib/core/route/keys'
import { stationName } from '@/lib/core/route/rules-words'
import type { Owed, RouteStep } from '@/lib/core/route/types'
import { formatFigure } from '@/lib/core/units/format-figure'
import { quantities } from '@/lib/core/units/quantities'
import { lower } from '@/lib/core/route/words'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { JobSheetOwed, JobSheetPoint, JobSheetStep } from '@/lib/pdf/job-sheet'
import { repeatsAt } from '@/lib/dossier/answer-repeats'
import { cutFactsOf } from '@/lib/dossier/cut-facts'
import type { Dossier } from '@/lib/dossier/dossier'
import type { NextPass } from '@/lib/dossier/next-pass'
import { answerWords, bareText } from '@/lib/dossier/reading-text'
import { jobValves } from './job-valves'
import { benchFiguresOf } from '@/lib/dossier/at-bench'
import { benchSentence } from '@/lib/words/at-bench'
import { orderText, reasonText } from '@/lib/words/route'

const closed: ReadonlySet<RouteStep['state']> = new Set(['done', 'waived', 'not needed'])

/**
 * Every step of the route with a blank for each reading it owes, and what was read already on its line. Of a head that
 * nobody works on there are no blanks and no figures: nothing invites to go on.
 */
export const jobSteps = (head: Dossier, live: boolean, pass: NextPass | null): JobSheetStep[] =>
  head.route
    .filter((step) => step.state !== 'not needed')
    .map((step) => ({ step, valves: live ? jobValves(head, step) : null }))
    .map(({ step, valves }) => ({
      label: step.label,
      station: stationName(step.station, head.settings.rules),
      state: step.state,
      outside: outsideWords(head, step),
      note: live ? noteWords(head, step) : '',
      wanted: !live || closed.has(step.state) ? '' : benchSentence(benchFiguresOf(head, step)),
      ...(valves ? { valves } : {}),
      owes: step.owes
        .filter(({ kind }) => !valves || !isValveKind(kind))
        .map((owed) => owedBlanks(head, step, owed, closed.has(step.state) ? [] : readsAt(head, step, owed, pass)))
        .flatMap((owed) => (live ? owed : (readOf(owed) ?? []))),
    }))

function outsideWords({ facts }: Dossier, step: RouteStep): string {
  if (step.byVendor) return `done by ${orderText(step.byVendor)}`
  const order = facts.orders.find((entry) => entry.receivedSeq === null && entry.scope.includes(step.stepId))
  return step.outside && order ? `at ${orderText(order)}` : ''
}

function noteWords({ visit, facts }: Dossier, step: RouteStep): string {
  if (step.state === 'waived') {
    const waiver = visit.waivers.findLast((entry) => entry.gap.startsWith(`step:${keyText(step)}`))
    return waiver?.reason ?? ''
  }
  if (step.reason !== null) return reasonText(step.reason)
  const cut = cutWords(facts.plan, step)
  if (cut !== '') return cut
  // What a step had better wait for is said by the order they are printed in.
  return step.isNew ? 'new under this plan' : ''
}

/** Of a cut in two parts each step says its own: what stands huge above is both together. */
function cutWords(plan: Dossier['facts']['plan'], { stepId }: RouteStep): string {
  if (!plan || plan.kind !== 'angle-flat') return ''
  if (stepId === 'angle-cut') return `${formatFigure(plan.angleIn, 'cutDepth')} at the deep edge alone`
  if (stepId === 'flat-cut') return `${formatFigure(plan.flatIn, 'cutDepth')} flat, off the new deck, in all`
  return ''
}

/** How often a place is to be read, all readings together. */
type Reads = { readonly point: string; readonly readings: number }

/** As many as the tolerance asks for: of every chamber at the bench, and of those that the mill's card wants read. */
function readsAt(
  head: Dossier,
  { stepId }: RouteStep,
  { kind, points }: Owed,
  pass: NextPass | null,
): readonly Reads[] {
  const { visit, settings } = head
  if (kind !== 'cc' || visit.targetCc === null) return []
  if (stepId === 'flat-cut') return pass?.reads ?? []
  if (stepId !== 'chambers') return []
  const { burette } = cutFactsOf(head)
  const readings = readsAtBench({
    chambers: points.length,
    readingCc: shopRepeatability(burette, []).sCc,
    divisionCc: burette.divisionCc,
    toleranceCc: settings.ccToleranceCc,
  })
  return readings === null ? [] : points.map((point) => ({ point, readings }))
}

function owedBlanks(head: Dossier, step: RouteStep, { kind, points }: Owed, reads: readonly Reads[]): JobSheetOwed {
  const { label, quantity, choices } = readingSpecs[kind]
  const unit = quantity ? quantities[quantity].unit : ''
  const read = head.newest.filter((reading) => sameKey(reading.step, step))
  // A valve's own answer, else the one that stood for all of its kind.
  const readOne = (point: string) =>
    placesOf(kind, point)
      .flatMap((place) => read.filter((entry) => entry.kind === place.kind && entry.point === place.point).slice(-1))
      .slice(0, 1)
  const places = [...new Set([...points, ...reads.map(({ point }) => point)])]
  const named = places.map((point) => ({ point, ...shortPoint(point) }))
  const groups = [...new Set(named.map(({ group }) => group))]
  return {
    label,
    unit,
    choices: (choices ?? []).map((choice) => lower(choice.label)),
    points: groups.flatMap((group) =>
      named
        .filter((entry) => entry.group === group)
        .flatMap(({ point, label }) => {
          const repeats = kind === 'cc' ? repeatsAt(head, step, point) : []
          const stands = repeats.length > 0 ? repeats : readOne(point)
          return placeOnSheet(
            { group, label },
            stands.map((reading) => readWords(reading, unit)),
            reads.find((one) => one.point === point)?.readings ?? 1,
          )
        }),
    ),
  }
}

/** What was read there, then a blank for each reading that is still to come; the name stands once. */
function placeOnSheet(
  { group, label }: { readonly group: string; readonly label: string },
  read: readonly string[],
  wanted: number,
): JobSheetPoint[] {
  const blanks = Array.from({ length: Math.max(0, wanted - read.length) }, () => null)
  const [first = null, ...more] = read.length === 0 ? blanks : [read.join(', '), ...blanks]
  return [{ group, label, value: first }, ...more.map((value) => ({ group, label: '', value }))]
}

/** Only what was read; null when nothing was. */
function readOf(owed: JobSheetOwed): JobSheetOwed | null {
  const points = owed.points.filter(({ value }) => value !== null)
  return points.length === 0 ? null : { ...owed, points }
}

function readWords(reading: EffectiveReading, unit: string): string {
  const { value } = reading
  const words = value === null ? answerWords(reading) : bareText({ ...reading, value }, unit)
  return [words, reading.confirmed ? 'confirmed' : '', reading.filled ? 'filled' : ''].filter(Boolean).join(', ')
}

/** A point as short as a narrow column needs it: what several have in common is said once, before them. */
function shortPoint(point: string): { readonly group: string; readonly label: string } {
  const [port, lift] = point.split('@')
  if (port && lift) return { group: `${port} at`, label: lift }
  if (/^\d+$/.test(point)) return { group: '', label: point }
  if (millStops.some((stop) => isMillPoint(point, stop))) return { group: '', label: pointLabel(point) }
  const [first = '', second = '', third = ''] = point.split('-')
  // The second valve of a kind in one chamber.
  if (/^\d+$/.test(first)) return { group: second, label: third === '' ? first : `${first}/${third}` }
  if (/^\d+$/.test(second) && first !== 'end') return { group: `${first} end`, label: second }
  return { group: '', label: pointLabel(point) }
}
