import { compressionRatio, cylinderVolumes } from '@/lib/core/compression/ratio'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import type { Dossier } from '../dossier'
import { chamberMeans } from './spec-chambers'
import { flatDeckMeans } from './spec-flat-deck'

export type Ratios = { readonly before: number | null; readonly after: number | null; readonly needs: string }

/** Compression from the measured means; null when nothing is known of the engine. */
export function ratiosOf(head: Dossier): Ratios | null {
  if ((head.visit.job.engine?.figures.length ?? 0) === 0) return null
  const isFlatDeck = head.facts.flatDeck !== null && head.facts.flatDeck !== undefined
  const volumes = cylinderVolumes(head.engine)
  if (!volumes.ok) return { before: null, after: null, needs: volumes.refusal.message }
  const at = (cc: number | null): number | null => {
    const ratio =
      cc === null ? null : compressionRatio(volumes.value, cc, isFlatDeck ? 'pocketVolume' : 'chamberVolume')
    return ratio?.ok ? ratio.value : null
  }
  const { beforeCc, afterCc } = isFlatDeck ? flatDeckMeans(head) : chamberMeans(head)
  return { before: at(beforeCc), after: at(afterCc), needs: '' }
}

export const ratioWords = (ratio: number): string => `${ratio.toFixed(2)} : 1`

export function compressionOf(head: Dossier): SpecSheetData['compression'] {
  const ratios = ratiosOf(head)
  if (!ratios || (ratios.needs === '' && ratios.before === null && ratios.after === null)) return null
  const words = (ratio: number | null) => (ratio === null ? null : ratioWords(ratio))
  return { before: words(ratios.before), after: words(ratios.after), needs: ratios.needs }
}

/** What the ratio takes for granted. */
export function compressionNotes(head: Dossier): string[] {
  const { pistonDishCc, pistonDomeCc } = head.engine
  const ratios = ratiosOf(head)
  if (!ratios || (ratios.before === null && ratios.after === null)) return []
  if (pistonDishCc !== undefined || pistonDomeCc !== undefined) return []
  return ['Compression is computed for a flat piston: neither dish nor dome was given.']
}
