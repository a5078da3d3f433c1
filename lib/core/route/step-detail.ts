import type { Said } from './codes'
import type { RouteStep } from './types'

/** What a stored route step holds beside the columns of its row. */
export type StepDetail = Omit<RouteStep, 'stepId' | 'occurrence' | 'orderId' | 'label' | 'station' | 'state'>

/** 1 (not written down): sentences. 2: codes for why, reason and waits. */
export const detailShape = 2

type Stored = Partial<StepDetail> & { readonly shape?: number }
type Sentences = Omit<StepDetail, 'why' | 'reason' | 'waitsFor'> & {
  readonly why: string
  readonly reason: string
  readonly waitsFor: readonly string[]
}

export const detailText = (detail: StepDetail): string => JSON.stringify({ shape: detailShape, ...detail })

/** A row of an older build keeps its sentences until the next change of its head writes it anew. */
export function detailOf(text: string): StepDetail {
  const { shape, ...detail } = JSON.parse(text) as Stored
  if (shape === detailShape) return detail as StepDetail
  const { why, reason, waitsFor, ...rest } = detail as unknown as Sentences
  return {
    ...rest,
    why: said(why),
    reason: said(reason),
    waitsFor: waitsFor.map((wait) => ({ code: 'said', text: wait })),
  }
}

const said = (text: string): Said | null => (text === '' ? null : { code: 'said', text })
