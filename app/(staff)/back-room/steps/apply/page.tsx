import { seeRulesPreview } from '@/lib/use-cases/rules/see-rules-preview'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { ApplyForm } from '../_components/apply-form'

export const metadata = { title: 'Heads in house' }

export default async function ApplyPage() {
  const actor = await requirePerson('settings.change')
  const { version, heads } = await seeRulesPreview(actor)
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
        <ApplyForm version={version} heads={heads} />
      )}
    </>
  )
}
