import type { MessageKind } from './kinds'

/** What a text says nothing without. */
export const messageLacks = ['name', 'promise', 'finding', 'price', 'ready-head', 'spec-sheet'] as const
export type MessageLack = (typeof messageLacks)[number]

export type MessageFacts = {
  /** False once the customer's personal data were blanked. */
  readonly hasName: boolean
  readonly hasPromise: boolean
  /** Heads that are released and still here. */
  readonly readyHeads: number
  /** Heads that have a spec sheet, here or not. */
  readonly specSheets: number
  /** The finding that is asked about; null: none is open. `isPriced`: it was asked with a price, so a link shows it. */
  readonly finding: { readonly isPriced: boolean } | null
}

/** What is missing before a text can be written, in the order in which it is put right. */
export function lacksOf(kind: MessageKind, facts: MessageFacts): readonly MessageLack[] {
  const lacks: readonly (MessageLack | false)[] = [
    !facts.hasName && 'name',
    kind === 'date-changed' && !facts.hasPromise && 'promise',
    kind === 'question' && facts.finding === null && 'finding',
    kind === 'question' && facts.finding !== null && !facts.finding.isPriced && 'price',
    kind === 'ready' && facts.readyHeads === 0 && 'ready-head',
    kind === 'spec-sheet' && facts.specSheets === 0 && 'spec-sheet',
  ]
  return lacks.filter((lack) => lack !== false)
}
