import { wantedLabel } from '@/app/_components/wanted/wanted-label'
import { engineFigures } from '@/lib/core/engine/figures'

const words: Readonly<Record<string, string>> = {
  'customer.name': 'Customer’s name',
  'customer.phone': 'Phone',
  'customer.email': 'E-mail',
  'customer.address': 'Address',
  targetCc: 'Target chamber',
  promiseOn: 'Promise date',
  deposit: 'Deposit',
  depositConfirmed: 'Deposit',
  classMinCc: 'Smallest chamber allowed',
  classMaxCut: 'Deepest cut allowed',
  ordered: 'Work ordered',
  heads: 'Heads',
}

const headWords: Readonly<Record<string, string>> = {
  headId: 'was here before',
  castingId: 'casting',
  tag: 'tag number',
  presentCc: 'chamber now',
  targetCc: 'target of this head',
  comeback: 'comeback',
}

const priceWords: Readonly<Record<string, string>> = {
  text: 'text',
  quantity: 'quantity',
  unitPrice: 'price each',
  tax: 'tax',
}

/** A field's path as the person knows it: "heads.0.tag" → "Head 1, own tag". */
export function fieldWords(path: string): string {
  const [first = '', second = '', third = ''] = path.split('.')
  if (first === 'heads' && second !== '') return `Head ${Number(second) + 1}, ${headWords[third] ?? third}`
  if (first === 'prices' && second !== '') return `Price line ${Number(second) + 1}, ${priceWords[third] ?? third}`
  if (first === 'engine' && third in engineFigures) {
    return `Engine, ${engineFigures[third as keyof typeof engineFigures].label}`
  }
  if (first === 'wanted' && second !== '') return `Wanted, ${wantedLabel(path)}`
  return words[path] ?? path
}
