import { DefinitionList } from '@/app/_components/ui/definition-list'
import { planLines, planTitle } from '@/lib/core/options/plan-words'
import type { VisitView } from '@/lib/use-cases/heads/see-head'

type Props = Pick<VisitView, 'plan' | 'removedBefore'>

export function PlanSummary({ plan, removedBefore }: Props) {
  if (!plan) return <p className="soft">No cut plan yet.</p>
  return (
    <section className="stack" aria-label="Cut plan">
      <h3>
        {planTitle(plan.record)}, version {plan.number}
      </h3>
      <DefinitionList items={planLines(plan.record, removedBefore)} />
      <p className="soft">
        {plan.accepted === '' ? 'The customer has not accepted this version yet.' : `Accepted by ${plan.accepted}.`}
      </p>
    </section>
  )
}
