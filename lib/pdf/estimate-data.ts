import type { ChamberShape } from '@/lib/core/casting/chamber-shape'
import type { EstimateAnswer } from '@/lib/core/options/estimate'
import type { ShopBlock } from '@/lib/core/spec/spec-sheet'

export type EstimateData = {
  readonly language: string
  readonly shop: ShopBlock
  readonly number: string
  readonly forWhom: string
  readonly on: string
  readonly by: string
  readonly casting: string
  readonly chamberShape: ChamberShape
  readonly note: string
  readonly answer: EstimateAnswer
  /** A head, as the shop writes money; '' when it may not be told or the shop has no list. */
  readonly price: string
}
