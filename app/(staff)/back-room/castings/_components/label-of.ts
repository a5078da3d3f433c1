import { castingFigures, type CastingFigureKey } from '@/lib/core/casting/figures'
import { formLabels } from './groups'

const own: Record<string, string> = {
  name: 'Name',
  material: 'Material',
  chamberCount: 'Chambers',
  chamberShape: 'Chamber shape',
  deepEdge: 'Deep edge',
  note: 'Note',
  bolts: 'Single bolts',
  variants: 'Versions to buy',
}
/** What a field of the casting form is called: "figures.as-cast.nominalCc" → "nominal chamber, as cast". */
export function labelOf(path: string): string {
  const [first = '', second = '', third = ''] = path.split('.')
  if (first === 'figures') {
    const label = castingFigures[third as CastingFigureKey]?.label ?? third
    return second === 'any' ? label : `${label}, ${formLabels[second as keyof typeof formLabels] ?? second}`
  }
  if (first === 'outlines') return `outline of the opening, ${formLabels[second as keyof typeof formLabels] ?? second}`
  return own[first] ?? path
}
