import { Notice } from '@/app/_components/ui/notice'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import type { Sendable } from '@/lib/use-cases/outside/see-sending'
import { leaveMarginAction } from '../actions'

const inches = (value: number): string => `${value.toFixed(3)} in`

type Props = { heads: readonly Sendable[]; finishesToSize: boolean; mayPlan: boolean }

/** What the vendor cuts and what is left for us; and the way out where the plan leaves nothing. */
export function ByThePlan({ heads, finishesToSize, mayPlan }: Props) {
  const bare = heads.filter((head) => head.planVersion > 0 && head.flatIn <= 0)
  const pairs = new Map(bare.map((head) => [head.pairId, head]))
  return (
    <>
      <Notice live={false} title="Planned cut">
        {heads.map((head) => (
          <p key={head.visitId}>
            {head.tag}: the vendor cuts {inches(head.angleIn)} at the deep edge
            {finishesToSize
              ? ` and ${inches(head.flatIn)} flat: nothing is left to cut here.`
              : `; ${inches(head.flatIn)} flat is left to cut here.`}
            {head.unmeasured && ' A rejected cut was not measured: measure the corners before cutting more.'}
          </p>
        ))}
      </Notice>
      {!finishesToSize &&
        mayPlan &&
        [...pairs.values()].map((head) => (
          <Notice key={head.pairId} kind="caution" live={false} title="No flat cut is left for the shop">
            <p>
              {head.tag} is planned as an angle cut only, and the vendor does not finish to size. An angle and flat plan
              reaches the same volume and leaves a flat cut of the shop’s margin to make here.
              {head.accepted && ' The customer accepted the present plan: ask again, a new plan needs a new yes.'}
            </p>
            <ActionButton action={leaveMarginAction} input={{ pairId: head.pairId, seenVersion: head.planVersion }}>
              Plan {head.tag} as angle and flat
            </ActionButton>
          </Notice>
        ))}
    </>
  )
}
