import { seeShop } from '@/lib/use-cases/shop/see-shop'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../_components/back-link'
import { changedBy } from '../_components/changed-by'
import { Logo } from './logo'
import { ShopForm } from './shop-form'

export const metadata = { title: 'The shop' }

export default async function ShopPage() {
  const actor = await requirePerson('settings.change')
  const { shop, block, last, lastLogo } = await seeShop(actor)
  const { name, address, phone, locale, version, timeZone, currency } = shop
  const paper = shop.paper === 'a4' ? 'a4' : 'letter'
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room">Back room</BackLink>
        <h1>The shop</h1>
        <p className="soft">
          Time zone {timeZone} and currency {currency} were fixed at set-up: what is already recorded would change its
          meaning.
        </p>
      </div>
      <ShopForm fresh={{ name, address, phone, locale, paper, version }} by={changedBy(last, { timeZone, locale })} />
      <Logo logo={block.logo ?? null} shop={block} by={changedBy(lastLogo, { timeZone, locale })} />
    </>
  )
}
