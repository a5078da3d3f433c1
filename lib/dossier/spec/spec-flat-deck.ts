import { flatDeckLimitsOf } from '@/lib/core/flat-deck/maker-limits'
import { flatDeckVolumeAfterCc, pocketsCc, type Pocket } from '@/lib/core/flat-deck/pockets'
import { mean } from '@/lib/core/mean'
import { makerLimitsWords } from '@/lib/core/options/flat-deck-words'
import { chamberOf, portOf } from '@/lib/core/readings/valves'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { Figure, SpecGroup, SpecLine } from '@/lib/core/spec/spec-sheet'
import { formatBare } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { Dossier } from '../dossier'
import { newestOfKind, valuedAt } from '../reading-text'

type Read = { readonly before: EffectiveReading | undefined; readonly after: EffectiveReading | undefined }

/** What was read at one place before the cut, and the newest after it. */
function readOf({ newest }: Dossier, kind: ReadingKind, point: string): Read {
  const here = newest.filter((reading) => reading.kind === kind && reading.point === point && reading.value !== null)
  return {
    before: here.find(({ step }) => step.stepId === 'seat-before'),
    after: here.findLast(({ step }) => step.stepId !== 'seat-before'),
  }
}

const pointsRead = ({ newest }: Dossier, kind: ReadingKind): string[] =>
  newestOfKind(newest, kind)
    .filter(({ value }) => value !== null)
    .map(({ point }) => point)

/** "0.0280 (was 0.0400)": one form, in inches, so that a reader can subtract. */
function changeWords({ before, after }: Read): string {
  const said = (reading: EffectiveReading | undefined) =>
    (reading?.value ?? null) === null ? '–' : Number(reading?.value).toFixed(4).replace('-', '−')
  return before === undefined ? said(after) : `${said(after)} (was ${said(before)})`
}

/** How deep the valves lie and how far the injectors stand out, before and after; nothing of a head with chambers. */
export function flatDeckGroup(head: Dossier): SpecGroup[] {
  if (!head.facts.flatDeck) return []
  const limits = flatDeckLimitsOf(head.casting)
  const valves = pointsRead(head, 'recession')
  const chambers = [...new Set(valves.map(chamberOf))].sort((a, b) => Number(a) - Number(b))
  const lines: SpecLine[] = [
    ...chambers.map((chamber) => ({
      label: `Valve below the deck, chamber ${chamber}`,
      value: (['intake', 'exhaust'] as const)
        .flatMap((port) => {
          const own = valves.filter((valve) => chamberOf(valve) === chamber && portOf(valve) === port).sort()
          const read = own.map((valve) => changeWords(readOf(head, 'recession', valve)))
          return read.length === 0 ? [] : [`${port} ${read.join(', ')} in`]
        })
        .join('; '),
    })),
    ...pointsRead(head, 'protrusion').map((chamber) => ({
      label: `Injector protrusion, chamber ${chamber}`,
      value: `${changeWords(readOf(head, 'protrusion', chamber))} in`,
    })),
    {
      label: 'Limits for the valves',
      value: `intake: ${makerLimitsWords(limits.recession.intake)}; exhaust: ${makerLimitsWords(limits.recession.exhaust)}`,
    },
    ...(head.facts.flatDeck.hasInjectors
      ? [{ label: 'Limits for the injectors', value: makerLimitsWords(limits.protrusion) }]
      : []),
  ]
  return valves.length === 0 ? [] : [{ title: 'Valves and injectors', lines }]
}

/** What the head holds over one piston before and after, in cc: by burette, else the valve pockets; null: not known. */
export function flatDeckMeans(head: Dossier): { beforeCc: number | null; afterCc: number | null } {
  const valves = pointsRead(head, 'recession')
  const chambers = [...new Set(valves.map(chamberOf))]
  const volume = (which: 'before' | 'after') => {
    const all = chambers.map((chamber) => volumeOf(head, chamber, valves, which))
    const known = all.flatMap((cc) => (cc === null ? [] : [cc]))
    return known.length === 0 || known.length < all.length ? null : mean(known)
  }
  return { beforeCc: volume('before'), afterCc: volume('after') }
}

function volumeOf(head: Dossier, chamber: string, valves: readonly string[], which: 'before' | 'after'): number | null {
  const own = valves.filter((valve) => chamberOf(valve) === chamber)
  const pockets = (of: 'before' | 'after'): Pocket[] | null => {
    const found = own.flatMap((valve) => {
      const recessionIn = readOf(head, 'recession', valve)[of]?.value
      const diameterIn = head.casting[`${portOf(valve)}ValveIn`]
      return typeof recessionIn === 'number' ? [{ diameterIn, recessionIn }] : []
    })
    return found.length === own.length ? found : null
  }
  const burette = readOf(head, 'deck-cc', chamber)
  const [before, after] = [pockets('before'), pockets('after')]
  const read = burette[which]?.value
  if (typeof read === 'number') return read
  if (which === 'before') {
    const cc = before && pocketsCc(before)
    return cc?.ok ? cc.value : null
  }
  const cc = after && flatDeckVolumeAfterCc(before ? (burette.before?.value ?? null) : null, before ?? [], after)
  return cc?.ok ? cc.value : null
}

/** The thinnest corner of the finished head, beside what was asked. */
export function thicknessFigure(head: Dossier): Figure[] {
  if (!head.facts.flatDeck) return []
  const corners = valuedAt(head.newest, 'finished', 'thickness').map(({ value }) => value)
  if (corners.length === 0) return []
  const wanted = head.wanted.finishedThicknessIn
  return [
    {
      label: 'Thickness',
      value: formatBare(Math.min(...corners), 'thickness'),
      unit: 'in',
      note: wanted ? `asked: ${typedFigure(wanted)}, thinnest corner` : 'thinnest corner',
    },
  ]
}
