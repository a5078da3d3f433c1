import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { changedBy } from '../../_components/changed-by'
import { OwnStepForm } from '../_components/own-step-form'

export const metadata = { title: 'Add a step' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export default async function NewStepPage({ searchParams }: Props) {
  const outside = (await searchParams).outside === '1'
  const actor = await requirePerson('settings.change')
  const [{ version, rules, last }, manner] = await Promise.all([seeRules(actor), shopLocale()])
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/steps">Steps and stations</BackLink>
        <h1>{outside ? 'Add an outside service' : 'Add a step'}</h1>
        <p className="soft">
          It is tried on a head of every kind before it stands: what would keep one from its end is refused.
        </p>
      </div>
      <OwnStepForm version={version} rules={rules} step={null} outside={outside} by={changedBy(last, manner)} />
    </>
  )
}
