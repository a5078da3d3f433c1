import { beside, gap, paragraph, within, type Paper } from './layout'
import { shopWords } from './logo'
import { facts } from './parts'
import type { ShopBlock } from '@/lib/core/spec/spec-sheet'

type Top = {
  readonly shop: ShopBlock
  /** A line more under the shop. */
  readonly contact?: string
  readonly title: string
  readonly block: Parameters<typeof facts>[0]
  readonly gapMm?: number
}

/** Top of a paper without a tag: the shop at the left, what the paper is and its facts at the right. */
export function shopAndTitle(paper: Paper, { shop, contact, title, block, gapMm = 3 }: Top): void {
  const { left, right } = paper
  const half = (left + right) / 2
  beside(paper, [
    () => within(paper, left, half - 4, (part) => shopWords(part, shop, contact)),
    () =>
      within(paper, half + 4, right, (part) => {
        paragraph(part, title, { face: 'text-bold', sizeMm: 5 })
        for (const line of facts(block)) paragraph(part, line)
      }),
  ])
  gap(paper, gapMm)
}
