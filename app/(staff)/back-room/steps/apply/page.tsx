import { EmptyState } from '@/app/_components/ui/empty-state'
import { seeRulesPreview } from '@/lib/use-cases/rules/see-rules-preview'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { ApplyForm } from '../_components/apply-form'

export const metadata = { title: 'Heads in house' }

export default async function ApplyPage() {
  const actor = await requirePerson('settings.change')
  const { version, heads } = await seeRulesPreview(actor)
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/steps">Steps and stations</BackLink>
        <h1>Heads in house</h1>
        <p className="soft">
          They follow the limits and steps of the day they were booked. Here is what the newest would make of each. What
          was done stays done; what is released stays as it is.
        </p>
      </div>
      {heads.length === 0 ? (
        <EmptyState title="All follow the newest">
          <p>Nothing in house was booked under older limits or steps.</p>
        </EmptyState>
      ) : (
        <ApplyForm version={version} heads={heads} />
      )}
    </>
  )
}
