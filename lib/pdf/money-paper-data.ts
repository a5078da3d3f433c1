import type { ShopBlock } from '@/lib/core/spec/spec-sheet'

/** An invoice, a credit note or a receipt, in the words it prints. */
export type MoneyPaperData = {
  readonly language: string
  readonly shop: ShopBlock
  /** "Invoice INV-0012" */
  readonly title: string
  /** Date, job, customer …: caption and value. */
  readonly block: readonly (readonly [caption: string, value: string])[]
  /** What a receipt says was taken, or why a credit note was written; '' for none. */
  readonly lead: string
  readonly lines: readonly {
    readonly text: string
    readonly quantity: string
    readonly each: string
    readonly tax: string
    readonly amount: string
  }[]
  readonly sums: readonly { readonly label: string; readonly amount: string; readonly strong: boolean }[]
}
