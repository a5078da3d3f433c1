import type { Result } from '@/lib/core/errors'
import { mostGoneIn } from '@/lib/core/head-now/gone'
import type { MetalGone } from '@/lib/core/head-now/metal-gone'
import { formatFigure } from '@/lib/core/units/format-figure'

const depth = (valueIn: number): string => formatFigure(Math.max(0, valueIn), 'cutDepth')

/** Edges that differ by less are one depth: a gauge does not tell them apart. */
const alikeIn = 0.0005

/** "0.0200 in", or both edges where an earlier cut left the deck leaning. */
export function removedBeforeWords(found: Result<MetalGone>): string {
  if (!found.ok) return found.refusal.code === 'missing' ? 'new thickness unknown' : found.refusal.message
  const { gone } = found.value
  const { atIntakeEdgeIn, atExhaustEdgeIn } = gone
  if (Math.abs(atIntakeEdgeIn - atExhaustEdgeIn) < alikeIn) return depth(mostGoneIn(gone))
  return `${depth(atIntakeEdgeIn)} at the intake edge, ${depth(atExhaustEdgeIn)} at the exhaust edge`
}

/** How that is known; '' when it is not. */
export function removedByWords(found: Result<MetalGone>): string {
  if (!found.ok) return ''
  const { by, takenAsFlat } = found.value
  if (by === 'corners') return 'by the thickness at the corners'
  if (by === 'new') return 'never cut before'
  if (by === 'visits')
    return takenAsFlat ? 'by this head’s earlier cuts here, and as typed then' : 'by this head’s earlier cuts here'
  return takenAsFlat ? 'as typed, taken as cut flat' : 'by the known cuts'
}
