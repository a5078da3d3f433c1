import { Notice } from '@/app/_components/ui/notice'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import type { Sendable } from '@/lib/use-cases/outside/see-sending'
import { leaveMarginAction } from '../actions'

const inches = (value: number): string => `${value.toFixed(3)} in`

type Props = { heads: readonly Sendable[]; finishesToSize: boolean; mayPlan: boolean }

/** What the vendor takes and what is left for us; and the way out where the plan leaves nothing. */
export function ByThePlan({ heads, finishesToSize, mayPlan }: Props) {
  const bare = heads.filter((head) => head.planVersion > 0 && head.flatIn <= 0)
  const pairs = new Map(bare.map((head) => [head.pairId, head]))
  return (
    <>
      <Notice live={false} title="By the plan">
        {heads.map((head) => (
          <p key={head.visitId}>
            {head.tag}: the vendor takes {inches(head.angleIn)} at the deep edge
            {finishesToSize
              ? ` and ${inches(head.flatIn)} flat: nothing is left for us.`
              : `; ${inches(head.flatIn)} flat is left for us.`}
            {head.unmeasured &&
              ' A cut of it was rejected and not measured: read the corners before more is taken off.'}
          </p>
        ))}
      </Notice>
      {!finishesToSize &&
        mayPlan &&
        [...pairs.values()].map((head) => (
          <Notice key={head.pairId} kind="caution" live={false} title="Nothing is left for the last cut here">
            <p>
              The plan of {head.tag} is an angle cut alone, and the vendor does not finish to size. Planned as angle and
              flat it reaches the same volume, with a flat part left here worth the shop’s margin.
              {head.accepted && ' The customer said yes to the plan as it is: ask again, the yes ends with it.'}
            </p>
            <ActionButton action={leaveMarginAction} input={{ pairId: head.pairId, seenVersion: head.planVersion }}>
              Plan {head.tag} as angle and flat
            </ActionButton>
          </Notice>
        ))}
    </>
  )
}
