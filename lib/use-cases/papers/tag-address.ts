import { isTag } from '@/lib/core/shop/tag-number'
import { localHostName, shopAddress } from '@/lib/data/shop-address'

/** What the QR code on a tag says: no secret, only where the head's record is; '' while it has no tag. */
export const qrTextOf = (tag: string): string => (isTag(tag) ? `${shopAddress()}/t/${encodeURIComponent(tag)}` : '')

/** Said on every paper with a QR code while the code works on this machine only; '' otherwise. */
export function addressWarning(): string {
  const hostname = localHostName()
  if (hostname === '') return ''
  return `The QR code works on this machine only: the shop’s address is still ${hostname}. Set the address and print again.`
}
