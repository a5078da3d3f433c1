import { cache } from 'react'
import { seeCasting } from '@/lib/use-cases/castings/see-castings'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { changedBy } from '../../../_components/changed-by'
import { PageHead } from '../../../_components/page-head'
import { ChangeCastingForm } from '../../_components/casting-form'
import { valuesOf } from '../../_components/form-values'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => orNotFound(seeCasting(await requirePerson('casting.change'), id)))

export async function generateMetadata({ params }: Props) {
  return { title: `Change ${(await see((await params).id)).casting.name}` }
}

export default async function ChangeCastingPage({ params }: Props) {
  const { casting, last } = await see((await params).id)
  const manner = await shopLocale()
  return (
    <>
      <PageHead up={[`/back-room/castings/${casting.id}`, casting.name]} title="Change this casting">
        <p className="soft">Plans already made keep the figures they were made with.</p>
      </PageHead>
      <ChangeCastingForm fresh={valuesOf(casting, manner.currencyExponent)} by={changedBy(last, manner)} />
    </>
  )
}
