import type { Lack, OrderName } from './codes'

/** What is to be put right: as the owner decided on a hold, or as it was rejected when a vendor sent it back. */
export type Rework =
  | { readonly from: 'owner'; readonly text: string }
  | { readonly from: 'vendor'; readonly order: OrderName; readonly text: string }

/** What is odd about a head, for whoever is about to work on it. */
export type HeadMark =
  | { readonly code: 'urgent' }
  | { readonly code: 'held'; readonly reason: string }
  /** It was here before and came back; '' where cause or payer is not known yet. */
  | { readonly code: 'comeback'; readonly cause: string; readonly pays: string }
  | { readonly code: 'rework'; readonly rework: Rework }
  /** Reported to the customer or still to be asked; no answer yet. */
  | { readonly code: 'finding'; readonly what: string }
  | { readonly code: 'out'; readonly lack: Lack }
  | { readonly code: 'mate-held'; readonly tag: string }
