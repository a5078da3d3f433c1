import { notFound } from 'next/navigation'
import { cache } from 'react'
import type { StepRef } from '@/lib/core/route/keys'
import { tableOf } from '@/lib/core/route/table'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { changedBy } from '../../_components/changed-by'
import { OwnStepForm } from '../_components/own-step-form'
import { StepForm } from '../_components/step-form'

type Props = { params: Promise<{ ref: string }> }

const see = cache(async (ref: string) => {
  const seen = await seeRules(await requirePerson('settings.change'))
  const row = tableOf(seen.rules).rowOf(ref as StepRef) ?? notFound()
  return { ...seen, row }
})

export async function generateMetadata({ params }: Props) {
  return { title: `Step: ${(await see((await params).ref)).row.label}` }
}

export default async function StepPage({ params }: Props) {
  const { version, rules, last, row } = await see((await params).ref)
  const by = changedBy(last, await shopLocale())
  return (
    <>
      <PageHead up={['/back-room/steps', 'Steps and stations']} title={row.label}>
        <p className="soft">
          A change applies to heads booked from now on. It is checked first against a head of every kind.
        </p>
      </PageHead>
      {row.own ? (
        <OwnStepForm version={version} rules={rules} step={row.own} outside={false} by={by} />
      ) : (
        <StepForm version={version} rules={rules} of={row.ref} by={by} />
      )}
    </>
  )
}
