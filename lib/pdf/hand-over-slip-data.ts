import type { ShopBlock } from '@/lib/core/spec/spec-sheet'

export type HandOverSlipHead = {
  readonly tag: string
  readonly casting: string
  /** The side it goes on; '' when nobody said. */
  readonly side: string
  readonly takenBy: string
  readonly on: string
  /** Parts and cores returned with it. */
  readonly partsBack: string
  readonly note: string
}

/** Money as the shop writes it. */
export type HandOverSlipData = {
  readonly language: string
  readonly shop: ShopBlock
  readonly jobNumber: string
  readonly revision: number
  readonly customer: string
  readonly engine: string
  readonly heads: readonly HandOverSlipHead[]
  /** Heads of the job that stay here. */
  readonly stillHere: readonly string[]
  readonly lines: readonly {
    readonly text: string
    readonly quantity: string
    readonly each: string
    readonly amount: string
  }[]
  readonly net: string
  readonly tax: string
  readonly total: string
  readonly payments: readonly { readonly what: string; readonly amount: string }[]
  /** "Still to pay", "Owed to you" or "Paid in full". */
  readonly balanceLabel: string
  readonly balance: string
}
