import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { changedBy } from '../../_components/changed-by'
import { OwnStepForm } from '../_components/own-step-form'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export async function generateMetadata({ searchParams }: Props) {
  return { title: (await searchParams).outside === '1' ? 'Add an outside service' : 'Add a step' }
}

export default async function NewStepPage({ searchParams }: Props) {
  const outside = (await searchParams).outside === '1'
  const actor = await requirePerson('settings.change')
  const [{ version, rules, last }, manner] = await Promise.all([seeRules(actor), shopLocale()])
  return (
    <>
      <PageHead
        up={['/back-room/steps', 'Steps and stations']}
        title={outside ? 'Add an outside service' : 'Add a step'}
      >
        <p className="soft">
          The step is checked against a head of every kind: one that would block a head is refused.
        </p>
      </PageHead>
      <OwnStepForm version={version} rules={rules} step={null} outside={outside} by={changedBy(last, manner)} />
    </>
  )
}
