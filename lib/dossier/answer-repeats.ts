import { allow } from '@/lib/core/access/can'
import { shopRepeatability } from '@/lib/core/chamber/burette'
import { wildRepeat, type WildRepeat } from '@/lib/core/chamber/repeatability'
import { standingRepeats } from '@/lib/core/chamber/repeats'
import { must, RefusedError } from '@/lib/core/errors'
import { pointLabel } from '@/lib/core/readings/points'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import { sameKey } from '@/lib/core/route/keys'
import type { StepKey } from '@/lib/core/route/step-ids'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Write } from '@/lib/data/write'
import { repeatQuestion } from '@/lib/words/repeats'
import { addCorrection } from './add-correction'
import type { Entry, ReadingEntry } from './add-readings'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'

/** The repeats of one chamber that stand at a step, oldest first; none when it was not read under this condition. */
export function repeatsAt(dossier: Dossier, step: StepKey, point: string): readonly EffectiveReading[] {
  const sets = standingRepeats(dossier.readings, dossier.changes)
  const set = sets.find(([first]) => first?.point === point && sameKey(first.step, step)) ?? []
  const last = set.at(-1)
  return last && !dossier.changes.some(({ seq, stepId }) => seq > last.seq && stepId !== step.stepId) ? set : []
}

/** The same reading again; anything else names the reading that it stands in the place of. */
export const again = 'again'

type Asked = {
  readonly reading: ReadingEntry
  readonly standing: readonly EffectiveReading[]
  readonly wild: WildRepeat | null
}

/**
 * A chamber that has a value is read anew: "again" or "instead of" must have been said. What replaces a reading becomes a
 * correction here; the rest is returned, each repeat with its mark. Refused with the question under each field.
 */
export async function answerRepeats(
  ctx: Write,
  dossier: Dossier,
  step: StepKey,
  entry: Entry,
): Promise<{ readonly entry: Entry; readonly corrected: number }> {
  // With a depth in the same go the chamber is read after that cut.
  const cutNow = entry.readings.some(({ kind }) => kind === 'cut-depth' || kind === 'edge-depth')
  const asked = cutNow ? [] : entry.readings.flatMap((reading) => askedOf(dossier, step, reading) ?? [])
  refuseUnanswered(asked)
  const instead = asked.filter(({ reading }) => reading.repeat !== again)
  if (instead.length > 0) must(allow(ctx.actor, 'reading.correct'))
  for (const { reading, standing } of instead) {
    const replaced = standing.find(({ id }) => id === reading.repeat)
    if (replaced) await addCorrection(ctx, dossier.visit, replaced, correctionOf(reading, entry))
  }
  const readings = entry.readings
    .filter((reading) => !instead.some((one) => one.reading === reading))
    .map((reading) => ({ ...reading, repeat: markOf(asked.find((one) => one.reading === reading)) }))
  return { entry: { ...entry, readings }, corrected: instead.length }
}

const correctionOf = ({ text }: ReadingEntry, { takenAt }: Entry) => ({
  correction: 'replace' as const,
  text,
  reason: 'Read anew, in the place of this reading',
  takenAt,
})

const markOf = (asked: Asked | undefined): string | undefined => asked && (asked.wild ? 'far' : again)

/** Null when there is nothing to ask: another kind, no figure, or the chamber was not read yet. */
function askedOf(dossier: Dossier, step: StepKey, reading: ReadingEntry): Asked | null {
  if (reading.kind !== 'cc' || reading.notTaken !== null || reading.text === '') return null
  const figure = parseFigure(reading.text, 'chamberVolume')
  const standing = repeatsAt(dossier, step, reading.point)
  if (!figure.ok || standing.length === 0) return null
  const { sCc } = shopRepeatability(
    cutFactsOf(dossier).burette,
    standing.map(({ id }) => id),
  )
  const values = standing.flatMap(({ value }) => value ?? [])
  return { reading, standing, wild: wildRepeat(figure.value.value, values, sCc) }
}

function refuseUnanswered(asked: readonly Asked[]): void {
  const open = asked.filter(
    ({ reading, standing }) => reading.repeat !== again && !standing.some(({ id }) => id === reading.repeat),
  )
  const fields = open.map(({ reading, standing, wild }): [string, string] => [
    `${reading.kind}|${reading.point}`,
    repeatQuestion(
      pointLabel(reading.point),
      standing.flatMap(({ value }) => value ?? []),
      wild,
    ),
  ])
  const [first] = fields
  if (!first) return
  throw new RefusedError({ code: 'ambiguous', message: first[1], fields: Object.fromEntries(fields) })
}
