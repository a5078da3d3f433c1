import { pointLabel } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { isValveKind } from '@/lib/core/readings/valve-kinds'
import type { StepId } from '@/lib/core/route/step-ids'
import type { SpecGroup, SpecLine } from '@/lib/core/spec/spec-sheet'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { Dossier } from '../dossier'
import { answerWords, newestOfKind } from '../reading-text'
import { wasCut } from '../measured-cut'
import { specWanted } from './spec-wanted'
import { usableLiftLines, valveLine } from './spec-valves'

/** What is told to the customer of everything that was read, under which heading. */
const table: readonly (readonly [string, readonly ReadingKind[]])[] = [
  [
    'Valves and seats',
    [
      'guide-clearance',
      'insert-press',
      'seat-depth',
      'top-cut',
      'insert-marks',
      'seat-angles',
      'seat-width',
      'runout',
      'vacuum',
      'sink',
      'stem-height',
      'leak-test',
    ],
  ],
  [
    'Assembly',
    ['installed-height', 'shims', 'retainer-to-seal', 'coil-bind', 'seat-pressure', 'open-pressure', 'spring-rate'],
  ],
  ['Deck', ['thickness', 'straightness', 'finish-how', 'finish']],
  ['Bolts and dowels', ['bolt-squared', 'bolt-passes', 'bolt-slotted', 'bolt-reach', 'dowels']],
  ['Fit', ['intake-choice', 'trial-fit', 'geometry-note', 'cam-note', 'ptv', 'ptv-clearance']],
  ['Checks', ['crack', 'pressure', 'break-through']],
]

/** Whatever was read, by kind: the newest answer at each point. `valvesInTable`: the figures of the valves stand elsewhere. */
export function groupsOf(head: Dossier, valvesInTable: boolean): SpecGroup[] {
  return table
    .map(([title, all]) => ({ title, kinds: all.filter((kind) => !(valvesInTable && isValveKind(kind))) }))
    .map(({ title, kinds }) => ({
      title,
      lines: [...kinds.flatMap((kind) => lineOf(head, kind)), ...(title === 'Assembly' ? usableLiftLines(head) : [])],
    }))
    .filter((group) => group.lines.length > 0)
}

/** Steps whose readings are of the head as it came. */
const asItCame: readonly StepId[] = ['thickness', 'seat-before']

/** What was read, and what it should have come to; a head as it came was not made to anybody's figures. */
function lineOf(head: Dossier, kind: ReadingKind): SpecLine[] {
  const readings = newestOfKind(head.newest, kind)
  const asCame = readings.every(({ step }) => asItCame.includes(step.stepId))
  const wanted = asCame
    ? null
    : specWanted(
        head,
        kind,
        readings.map(({ point }) => point),
      )
  return measuredOf(head, kind, wasCut(head) && asCame).map((line) => (wanted ? { ...line, wanted } : line))
}

function measuredOf(head: Dossier, kind: ReadingKind, before: boolean): SpecLine[] {
  if (isValveKind(kind)) return valveLine(head, kind)
  const readings = newestOfKind(head.newest, kind)
  const label = `${readingSpecs[kind].label}${before ? ', before the cut' : ''}`
  const answers = readings.map((reading) => ({
    where: pointLabel(reading.point),
    words: customerWords(reading),
  }))
  const [first] = answers
  if (!first) return []
  const byPort = portsInShort(readings.map(({ point }, i) => ({ point, words: answers[i]?.words ?? '' })))
  if (byPort !== null) return [{ label, value: byPort }]
  const alike = answers.every(({ words }) => words === first.words)
  if (alike && answers.length > 1) return [{ label, value: `${first.words} at each` }]
  return [
    {
      label,
      value: answers.map(({ where, words }) => (where === '' ? words : `${where} ${words}`)).join(', '),
    },
  ]
}

/** Answers that say what somebody here is to do, as the customer is told of it. */
const toldToCustomer: Readonly<Partial<Record<string, string>>> = {
  'intake-choice tell-customer': 'not cut: check the fit at assembly',
  'geometry-note told': 'not measured: check length and geometry at assembly',
  'geometry-note change': 'measured: other pushrods are needed',
  'cam-note told': 'timing retards: check it at assembly',
  'trial-fit told': 'not tried: check before assembly',
  'ptv told': 'not measured: check the clearance at assembly',
}

const customerWords = (reading: EffectiveReading): string =>
  toldToCustomer[`${reading.kind} ${reading.text}`] ?? answerWords(reading)

type Answer = { readonly point: string; readonly words: string }

/** "intake .083, .081 in, exhaust .120, .117 in, from chamber 1": all chambers of a head in few words; null: not so read. */
function portsInShort(answers: readonly Answer[]): string | null {
  const sides = (['intake', 'exhaust'] as const).map((port) => ({
    port,
    words: answers.flatMap(({ point, words }) => (point.endsWith(`-${port}`) ? [{ point, words }] : [])),
  }))
  const count = sides[0]?.words.length ?? 0
  const whole = sides.every(({ port, words }) => words.every(({ point }, i) => point === `${i + 1}-${port}`))
  if (!whole || count < 2 || sides.some(({ words }) => words.length !== count)) return null
  const unit = / [^ ]+$/.exec(answers[0]?.words ?? '')?.[0] ?? ''
  if (unit === '' || answers.length !== 2 * count || !answers.every(({ words }) => words.endsWith(unit))) return null
  const bare = (words: string) => words.slice(0, -unit.length)
  const told = sides.map(({ port, words }) => `${port} ${words.map((one) => bare(one.words)).join(', ')}${unit}`)
  return `${told.join('; ')}; chambers 1 to ${count}`
}
