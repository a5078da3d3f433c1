/** A shop as simple as it can be said: what must be on record after the deeds that went through, and nothing else. */
export type HeadModel = {
  readonly visitId: string
  readonly job: JobModel
  /** Kinds of what happened to it, in order; readings go without. */
  readonly events: string[]
  /** Step, kind and point → what was read last, as typed. */
  readonly values: Map<string, string>
  readonly openHolds: { readonly id: string; readonly version: number }[]
  readonly decidedHolds: { readonly id: string; readonly version: number }[]
  releases: number
}

export type JobModel = {
  readonly id: string
  readonly number: string
  readonly pairId: string
  plans: number
  dueMinor: number
  /** Of the lines that are on no invoice yet. */
  openMinor: number
  readonly payments: { readonly id: string; readonly minor: number; voided: boolean }[]
}

export type OrderModel = { readonly orderId: string; readonly head: HeadModel; received: boolean }

export type Done = { readonly what: string; readonly answer: unknown; readonly again: () => Promise<unknown> }

export type Model = {
  readonly jobs: JobModel[]
  readonly heads: HeadModel[]
  readonly orders: OrderModel[]
  /** Of invoices and receipts, each in the order they were given. */
  readonly invoices: string[]
  readonly receipts: string[]
  /** What was acknowledged, each to be found once for ever. */
  readonly done: Done[]
}

export const emptyModel = (): Model => ({ jobs: [], heads: [], orders: [], invoices: [], receipts: [], done: [] })

/** `must`: it goes through. `must not`: it is refused. `may`: the model is too simple to say. */
export type Forecast = 'must' | 'must not' | 'may'

/** One deed as it is asked for: what the model says of it, the shop's own way of doing it, and what follows from a yes. */
export type Deed = {
  readonly what: string
  readonly forecast: Forecast
  readonly run: (moment: {
    readonly now: Date
    readonly op: { readonly id: string; readonly hash: string }
  }) => Promise<unknown>
  readonly follow: (answer: never) => void
  /** The head or job that is looked at afterwards. */
  readonly head?: HeadModel
  readonly job?: JobModel
}
