import { Pager } from '@/app/_components/ui/pager'
import { seeRulesPreview } from '@/lib/use-cases/rules/see-rules-preview'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { ApplyForm } from '../_components/apply-form'

export const metadata = { title: 'Heads in house' }

export default async function ApplyPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('settings.change')
  const { version, heads, more } = await seeRulesPreview(actor, page)
  return (
    <>
      <PageHead up={['/back-room/steps', 'Steps and stations']} title="Heads in house">
        <p className="soft">
          These heads use the limits and steps of the day they were booked. Choose the ones that should use the newest;
          each shows what would change. Finished work and released heads stay as they are.
        </p>
      </PageHead>
      {heads.length === 0 ? (
        <p className="soft">All heads in house use the newest limits and steps.</p>
      ) : (
        <ApplyForm key={page} version={version} heads={heads} />
      )}
      <Pager page={page} more={more} href={(to) => `/back-room/steps/apply?page=${to}`} />
    </>
  )
}
