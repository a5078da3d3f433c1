import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { quantities } from '../units/quantities'
import { edgeDepthIn } from './angle'
import type { PlanInput } from './plan-types'
import { angleBeside, flatBeside, type Parts } from './split'
import { factOf } from '../units/fact-of'

/**
 * The flat and the angle part that together take a depth at the chamber's centroid (inches), as the kind and the choice
 * want it: a flat cut is all flat, a pure angle cut has no flat part, angle and flat fix one and leave the other.
 * Derived: D = f + w·s solved for the part that was not chosen. Example: 0.060 with 0.020 flat, share 0.635 → 0.020
 * and 0.063.
 */
export function partsFor(input: PlanInput, depthIn: number): Result<Parts> {
  const parts = shared(input, depthIn)
  if (!parts.ok) return parts
  const deepestIn = parts.value.flatIn + parts.value.angleIn
  if (deepestIn <= quantities.cutDepth.most) return parts
  return refuse('out-of-range', `The cut would be ${deepestIn.toFixed(3)} in deep: more than any head allows.`)
}

function shared(input: PlanInput, depthIn: number): Result<Parts> {
  const { kind, split, centroidShare } = input
  if (kind === 'flat') return ok({ flatIn: depthIn, angleIn: 0 })
  if (kind === 'angle') return besideFlat(0, input, depthIn)
  if (split.by === 'flat') return besideFlat(split.flatIn, input, depthIn)
  if (split.by === 'margin') return besideMargin(input, depthIn)
  const angle = split.by === 'angle' ? ok(split.angleIn) : edgeDepthIn(split.angleDeg, input.milledWidthIn)
  if (!angle.ok) return angle
  const flat = flatBeside(depthIn, centroidShare, angle.value)
  return flat.ok ? ok({ flatIn: flat.value, angleIn: angle.value }) : flat
}

function besideFlat(flatIn: number, { centroidShare }: PlanInput, depthIn: number): Result<Parts> {
  const angle = angleBeside(depthIn, centroidShare, flatIn)
  return angle.ok ? ok({ flatIn, angleIn: angle.value }) : angle
}

function besideMargin(input: PlanInput, depthIn: number): Result<Parts> {
  const rate = knownFacts({ thouPerCc: factOf('rate', input.thouPerCc, 'thouPerCc') })
  if (!rate.ok) return rate
  return besideFlat((input.marginCc * rate.value.thouPerCc) / 1000, input, depthIn)
}
