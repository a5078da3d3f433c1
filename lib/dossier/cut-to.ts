import { formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { Dossier } from './dossier'

/** "58.0 cc"; of a flat-deck head "4.1200 in thick", or "clean-up"; '' where nothing was asked. */
export function cutToWords({ visit, facts, wanted, plan }: Dossier): string {
  if (!facts.flatDeck) return typedFigure({ text: visit.targetText, unit: visit.targetUnit })
  const wantedIn = plan?.flatDeck?.wantedThicknessIn ?? wanted.finishedThicknessIn?.value ?? null
  if (wantedIn !== null && plan?.kind !== 'clean-up') return `${formatFigure(wantedIn, 'thickness')} thick`
  return facts.ordered.includes('flat-cut') || plan?.kind === 'clean-up' ? 'clean-up' : ''
}
