import { castingFigures, type CastingFigureKey } from '@/lib/core/casting/figures'
import { boltLabels, formLabels } from './groups'

const own: Record<string, string> = {
  name: 'Name',
  material: 'Material',
  chamberCount: 'Chambers',
  chamberShape: 'Chamber shape',
  deepEdge: 'Deep edge',
  note: 'Note',
}
const variantLabels: Record<string, string> = {
  name: 'name',
  nominalCc: 'nominal chamber',
  supply: 'supply',
  cutByMaker: 'cut by its maker',
  leadDays: 'lead time',
  cost: 'cost',
}

/** What a field of the casting form is called: "figures.as-cast.nominalCc" → "nominal chamber, as cast". */
export function labelOf(path: string): string {
  const [first = '', second = '', third = ''] = path.split('.')
  if (first === 'figures') {
    const label = castingFigures[third as CastingFigureKey]?.label ?? third
    return second === 'any' ? label : `${label}, ${formLabels[second as keyof typeof formLabels] ?? second}`
  }
  const place = Number(second) + 1
  if (first === 'bolts') return `Bolt ${place}, ${boltLabels[third as keyof typeof boltLabels] ?? third}`
  if (first === 'variants') return `Variant ${place}, ${variantLabels[third] ?? third}`
  return own[first] ?? path
}
