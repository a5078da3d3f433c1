import { notFound } from 'next/navigation'
import type { StepRef } from '@/lib/core/route/keys'
import { tableOf } from '@/lib/core/route/table'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { changedBy } from '../../_components/changed-by'
import { OwnStepForm } from '../_components/own-step-form'
import { StepForm } from '../_components/step-form'

export const metadata = { title: 'Change a step' }

type Props = { params: Promise<{ ref: string }> }

export default async function StepPage({ params }: Props) {
  const { ref } = await params
  const actor = await requirePerson('settings.change')
  const [{ version, rules, last }, manner] = await Promise.all([seeRules(actor), shopLocale()])
  const row = tableOf(rules).rowOf(ref as StepRef)
  if (row === undefined) notFound()
  const by = changedBy(last, manner)
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/steps">Steps and stations</BackLink>
        <h1>{row.label}</h1>
        <p className="soft">
          A change holds for the heads booked from now on. It is tried on a head of every kind before it stands.
        </p>
      </div>
      {row.own ? (
        <OwnStepForm version={version} rules={rules} step={row.own} outside={false} by={by} />
      ) : (
        <StepForm version={version} rules={rules} of={row.ref} by={by} />
      )}
    </>
  )
}
