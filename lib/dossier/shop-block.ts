import type { ShopBlock } from '@/lib/core/spec/spec-sheet'
import { logoOf, type LogoColumns } from '@/lib/data/shop'

type Addressed = { readonly name: string; readonly address: string; readonly phone: string }

/** Name, address and telephone of a shop or of a vendor. */
export const addressBlock = ({ name, address, phone }: Addressed): ShopBlock => ({
  name,
  lines: [...address.split('\n'), phone].map((line) => line.trim()).filter((line) => line !== ''),
})

/** What stands of the shop at the head of a paper that leaves it. */
export function shopBlock(shop: Addressed & LogoColumns): ShopBlock {
  const logo = logoOf(shop)
  return logo ? { ...addressBlock(shop), logo } : addressBlock(shop)
}
