import { AcceptForm } from '@/app/(staff)/jobs/[number]/plan/[pair]/accept-form'
import { Notice } from '@/app/_components/ui/notice'
import type { Sendable } from '@/lib/use-cases/outside/see-sending'

/** Those of the heads whose newest plan the customer has not accepted: one of each pair, with the tags of all. */
export function unaccepted(heads: readonly Sendable[]): { plan: Sendable; tags: string }[] {
  const open = heads.filter(({ accepted, planVersion }) => planVersion > 0 && !accepted)
  const pairs = new Map(open.map((head) => [head.pairId, head]))
  return [...pairs.values()].map((plan) => ({
    plan,
    tags: open
      .filter(({ pairId }) => pairId === plan.pairId)
      .map(({ tag }) => tag)
      .join(' and '),
  }))
}

type Props = { heads: readonly Sendable[]; mayAccept: boolean; mayOverride: boolean }

/** An angle cut cannot be put back, so the customer's yes comes before it goes out. */
export function NotAccepted({ heads, mayAccept, mayOverride }: Props) {
  return unaccepted(heads).map(({ plan, tags }) => (
    <Notice key={plan.planId} kind="caution" title="The customer has not accepted this cut yet" live={false}>
      <p>
        {tags}, job {plan.jobNumber}: call the customer and say what follows from the cut.
        {!mayAccept && ' The counter records the yes.'}
        {mayOverride && ' Or enter below why it goes out without.'}
      </p>
      {mayAccept && <AcceptForm planId={plan.planId} number={plan.planVersion} />}
    </Notice>
  ))
}
