import type { z } from 'zod'
import { allow, readAction } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { shopRepeatability } from '@/lib/core/chamber/burette'
import { millPoint } from '@/lib/core/chamber/mill-point'
import { wildRepeat } from '@/lib/core/chamber/repeatability'
import { must, RefusedError } from '@/lib/core/errors'
import { secondCheckNeeded } from '@/lib/core/route/second-check'
import type { RouteStep } from '@/lib/core/route/types'
import { formatFigure } from '@/lib/core/units/format-figure'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { addEvent } from '@/lib/data/visits'
import { write, type Moment, type Write } from '@/lib/data/write'
import { addReadings, nothingConfirmed } from '@/lib/dossier/add-readings'
import { again, repeatsAt } from '@/lib/dossier/answer-repeats'
import { cutFactsOf } from '@/lib/dossier/cut-facts'
import type { Dossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { chambersBefore, takenBy } from '@/lib/dossier/second-check'
import type { secondCheckSchema } from '@/lib/schemas/visit'
import { disagreeText, secondCheckRefusals } from '@/lib/words/second-check'
import { loadStepForChange, refuseAway } from './step-change'

type Input = z.output<typeof secondCheckSchema>

/**
 * Before the first pass of a deep cut another person than the one who takes the head reads one chamber and confirms plan
 * and head. A reading that does not agree with what the chamber held before is refused: then nothing is confirmed.
 */
export async function secondCheck(actor: Actor, input: Input, moment: Moment) {
  must(allow(actor, 'reading.record-bench'))
  return write(actor, moment, async (ctx) => {
    const { step, ...head } = await loadStepForChange(ctx, input, readAction)
    const { visit } = head
    refuseAway(head.facts)
    const need = secondCheckNeeded(head.facts, step)
    if (!need) return refuse(secondCheckRefusals.notNeeded)
    if (takenBy(head, step) === actor.personId) refuse(secondCheckRefusals.taker)
    const note = need.readsChamber ? await readChamber(ctx, head, step, input) : ''
    await addEvent(ctx, visit.id, 'second-check', step, { note })
    const { stepId } = step
    ctx.audit({
      action: 'step.second-check',
      subjectId: stepId,
      visitId: visit.id,
      jobId: visit.jobId,
      changes: { read: note },
    })
    const after = await refreshRoute(ctx.tx, visit.id, ctx.now)
    return { label: step.label, seen: after.visit.events.at(-1)?.seq ?? 0 }
  })
}

/** The chamber as the second person reads it, kept like any reading before the cut; gives it in words. */
async function readChamber(ctx: Write, head: Dossier, step: RouteStep, input: Input): Promise<string> {
  const { chamber, text, instrumentId } = input
  if (chamber === '') refuseField('chamber', 'Choose the chamber.')
  if (text === '') refuseField('text', 'Enter what the chamber holds.')
  const { value } = must(parseFigure(text, 'chamberVolume'))
  refuseOther(head, chamber, value)
  const point = millPoint('before', chamber)
  const repeat = repeatsAt(head, step, point).length > 0 ? again : null
  const readings = [{ kind: 'cc' as const, point, text, notTaken: null, repeat }]
  await addReadings(ctx, head.visit, step, { readings, instrumentId, conditions: {}, takenAt: null }, nothingConfirmed)
  return `chamber ${chamber}, ${formatFigure(value, 'chamberVolume')}`
}

function refuseField(field: string, message: string): never {
  throw new RefusedError({ code: 'invalid', message, fields: { [field]: message } })
}

function refuse(message: string): never {
  throw new RefusedError({ code: 'wrong-state', message })
}

/** The question is whether it is this head and this plan: far off means no. */
function refuseOther(head: Dossier, chamber: string, nowCc: number): void {
  const before = chambersBefore(head)
  const held = before.get(chamber)
  if (!held && before.size > 0) {
    refuseField('chamber', `Read a chamber that was read before: ${[...before.keys()].join(', ')}.`)
  }
  if (!held) return
  const { sCc } = shopRepeatability(cutFactsOf(head).burette, [])
  const readings = Array.from({ length: held.count }, () => held.meanCc)
  if (!wildRepeat(nowCc, readings, sCc)) return
  const message = disagreeText(chamber, held.meanCc, nowCc)
  throw new RefusedError({ code: 'unlikely', message, fields: { text: message } })
}
