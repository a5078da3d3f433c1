import { toleranceGap } from '@/lib/core/route/gaps'
import { keyOf } from '@/lib/core/route/keys'
import type { SpecChamber, SpecChambers } from '@/lib/core/spec/spec-sheet'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import type { Dossier } from '../dossier'
import { answerWords, bareText, readAt, valuedAt, type Valued } from '../reading-text'
import { targetWords } from './spec-words'
import { mean } from '@/lib/core/mean'

/** Means of all chambers before and after, in cc; null where none was measured. */
export function chamberMeans({ newest: readings }: Dossier): { beforeCc: number | null; afterCc: number | null } {
  const of = (stepId: 'chambers' | 'finished') => {
    const values = valuedAt(readings, stepId, 'cc').map((reading) => reading.value)
    return values.length === 0 ? null : mean(values)
  }
  return { beforeCc: of('chambers'), afterCc: of('finished') }
}

/** Chamber volumes before and after, each with whose valves and which plug; null when none was measured. */
export function chambersOf(head: Dossier): SpecChambers | null {
  const before = valuedAt(head.newest, 'chambers', 'cc')
  const after = valuedAt(head.newest, 'finished', 'cc')
  const nominal = before.length === 0 ? nominalBefore(head) : null
  if (before.length + after.length === 0) return null
  const target = targetWords(head)
  const rows = Array.from({ length: head.chambers }, (_, place): SpecChamber => {
    const chamber = String(place + 1)
    const read = after.find((reading) => reading.point === chamber)
    return {
      chamber,
      beforeCc: textAt(before, chamber),
      afterCc: textAt(after, chamber),
      remark: read ? remarkOf(head, read) : '',
    }
  })
  return {
    rows,
    meanBeforeCc: nominal ?? meanText(before),
    meanAfterCc: meanText(after),
    spreadBeforeCc: spreadText(before),
    spreadAfterCc: spreadText(after),
    target: target === '' ? null : target,
    beforeWith: nominal === null ? withWords(head, 'chambers') : 'nominal, not measured',
    afterWith: withWords(head, 'finished'),
    picture: { beforeCc: valuesOf(head, before), afterCc: valuesOf(head, after), target: targetBand(head) },
  }
}

const valuesOf = ({ chambers }: Dossier, readings: readonly Valued[]): (number | null)[] =>
  Array.from(
    { length: chambers },
    (_, place) => readings.find(({ point }) => point === String(place + 1))?.value ?? null,
  )

const targetBand = ({ visit, settings }: Dossier) =>
  visit.targetCc === null ? null : { cc: visit.targetCc, toleranceCc: settings.ccToleranceCc }

const textAt = (readings: readonly Valued[], chamber: string): string | null => {
  const reading = readings.find(({ point }) => point === chamber)
  return reading ? bareText(reading, 'cc') : null
}

/** A head that was bought in has no before of its own: its record's figure stands there, and says so. */
function nominalBefore({ visit, casting }: Dossier): string | null {
  if (visit.source === 'customer') return null
  const nominalCc = visit.presentCc ?? casting.nominalCc
  return nominalCc === undefined ? null : formatBare(nominalCc, 'chamberVolume')
}

const meanText = (readings: readonly Valued[]): string | null =>
  readings.length === 0 ? null : formatBare(mean(readings.map(({ value }) => value)), 'chamberVolume')

function spreadText(readings: readonly Valued[]): string | null {
  const values = readings.map(({ value }) => value)
  return values.length < 2 ? null : formatBare(Math.max(...values) - Math.min(...values), 'chamberVolume')
}

const withWords = ({ newest: readings }: Dossier, stepId: 'chambers' | 'finished'): string =>
  (['valves-used', 'plug-used'] as const)
    .flatMap((kind) => readAt(readings, stepId, kind).slice(-1).map(answerWords))
    .join(', ')

/** Decimals are not exact in binary: 60.5 is still within 0.5 of 60. */
const rounding = 1e-9

/** A chamber that is out says so on the sheet, whether it was waived or not. */
function remarkOf({ visit, settings }: Dossier, reading: Valued): string {
  const offCc = visit.targetCc === null ? 0 : reading.value - visit.targetCc
  const shortCc = visit.job.classMinCc === null ? 0 : visit.job.classMinCc - reading.value
  const remarks = [
    Math.abs(offCc) > settings.ccToleranceCc + rounding
      ? `${formatFigure(Math.abs(offCc), 'volume')} ${offCc > 0 ? 'over' : 'under'} the target${waived(visit, 'cc', reading)}`
      : '',
    shortCc > rounding
      ? `${formatFigure(shortCc, 'volume')} under the class minimum${waived(visit, 'class', reading)}`
      : '',
  ]
  return remarks.filter((remark) => remark !== '').join('; ')
}

function waived(visit: Dossier['visit'], what: string, { id, point }: Valued): string {
  const gap = toleranceGap(keyOf('finished'), `${what}:${point}`, id)
  return visit.waivers.some((waiver) => waiver.gap === gap) ? ', waived' : ''
}
