import { seeShop } from '@/lib/use-cases/shop/see-shop'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../_components/page-head'
import { changedBy } from '../_components/changed-by'
import { Logo } from './logo'
import { ShopForm } from './shop-form'

export const metadata = { title: 'The shop' }

export default async function ShopPage() {
  const actor = await requirePerson('settings.change')
  const { shop, block, last, lastLogo, countries, ownCountry } = await seeShop(actor)
  const { name, address, phone, locale, version, timeZone, currency, country } = shop
  const paper = shop.paper === 'a4' ? 'a4' : 'letter'
  return (
    <>
      <PageHead up={['/back-room', 'Back room']} title="The shop">
        <p className="soft">
          Time zone {timeZone} and currency {currency} cannot be changed: records already made depend on them.
        </p>
      </PageHead>
      <ShopForm
        fresh={{ name, address, phone, locale, paper, country, version }}
        by={changedBy(last, { timeZone, locale })}
        countries={countries}
        ownCountry={ownCountry}
      />
      <Logo logo={block.logo ?? null} shop={block} by={changedBy(lastLogo, { timeZone, locale })} />
    </>
  )
}
