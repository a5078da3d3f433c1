import type { ShopBlock } from '@/lib/core/spec/spec-sheet'

export type ClaimTicketHead = {
  readonly tag: string
  readonly casting: string
  readonly side: string
  /** Parts that came with it; '' for none. */
  readonly cameWith: string
}

/** What the customer takes along on leaving heads here. Money as the shop writes it. */
export type ClaimTicketData = {
  readonly language: string
  readonly shop: ShopBlock
  readonly jobNumber: string
  readonly customer: string
  readonly on: string
  /** The day that was promised; '' for none. */
  readonly promise: string
  readonly heads: readonly ClaimTicketHead[]
  /** Of the whole job. */
  readonly total: string
  readonly paid: string
  readonly balanceLabel: string
  readonly balance: string
}
