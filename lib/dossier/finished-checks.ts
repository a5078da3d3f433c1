import {
  edges,
  edgeThicknessIn,
  finishAskedMicroIn,
  mateDiffers,
  roughFinish,
  type FinishedCaution,
} from '@/lib/core/route/finished-checks'
import { formatFigure } from '@/lib/core/units/format-figure'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { MateCorners } from './of-mates'
import type { FieldTarget } from './step-fields'
import { cornersOf } from '@/lib/core/straightness/corners-fit'

/** What the finished figures of a head are held against beyond its own limits. */
export type FinishedInputs = {
  readonly mates: readonly MateCorners[]
  readonly pairThicknessIn: number
  readonly finishAsked: string
}

/** The mate's thickness at the same edge, and the finish that was asked: marked where they are entered. */
export function finishedTarget(kind: string, point: string, inputs: FinishedInputs): FieldTarget | null {
  if (kind === 'thickness') return mateTarget(point, inputs)
  const most = kind === 'finish' ? finishAskedMicroIn(inputs.finishAsked) : null
  return most === null ? null : { text: inputs.finishAsked, lowest: 0, highest: most }
}

function mateTarget(point: string, { mates, pairThicknessIn }: FinishedInputs): FieldTarget | null {
  const edge = edges.find((name) => point.startsWith(name))
  const mate = mates.find(({ corners }) => edge && edgeThicknessIn(corners, edge) !== null)
  const there = mate && edge ? edgeThicknessIn(mate.corners, edge) : null
  if (!mate || there === null) return null
  const text = `${formatFigure(there, 'thickness')} on ${mate.tag}`
  return { text, lowest: there - pairThicknessIn, highest: there + pairThicknessIn }
}

/** What the figures that stand say beyond the head's own limits: its mate, the finish asked. */
export function finishedCautions(
  readings: readonly EffectiveReading[],
  inputs: FinishedInputs,
): readonly FinishedCaution[] {
  const own = readings.filter(({ step }) => step.stepId === 'finished')
  const corners = cornersOf(own)
  const finish = own.findLast(({ kind }) => kind === 'finish')?.value ?? null
  return [
    ...inputs.mates.flatMap((mate) => mateDiffers(corners, mate, inputs.pairThicknessIn)),
    ...(finish === null ? [] : roughFinish(finish, inputs.finishAsked)),
  ]
}
