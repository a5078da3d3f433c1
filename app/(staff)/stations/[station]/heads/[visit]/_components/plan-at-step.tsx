import { Notice } from '@/app/_components/ui/notice'
import type { StepId } from '@/lib/core/route/step-ids'
import type { PlanAtStep as Plan } from '@/lib/use-cases/stations/plan-at-step'
import { CutTable, NextPass } from './later'
import styles from './step.module.css'

/** The plan's figures for this step; at the deck mill one huge figure. */
export function PlanAtStep({ plan, visitId, stepId }: { plan: Plan; visitId: string; stepId: StepId }) {
  return (
    <section aria-label="Plan" className="stack">
      {plan.pass && <NextPass pass={plan.pass} />}
      {plan.huge && (
        <p className={styles.huge}>
          <span className={styles.hugeLabel}>{plan.huge.label}</span>
          <span className="figure-huge">{plan.huge.value}</span>{' '}
          <span className={styles.hugeUnit}>{plan.huge.unit}</span>
          {plan.huge.note !== '' && <span className={styles.hugeNote}>{plan.huge.note}</span>}
        </p>
      )}
      {plan.cut && <CutTable cut={plan.cut} visitId={visitId} stepId={stepId} />}
      {plan.lines.length > 0 && (
        <dl className={styles.lines}>
          {plan.lines.map((line) => (
            <div key={line.label}>
              <dt>{line.label}</dt>
              <dd>
                {line.value} {line.unit}
                {line.note !== '' && <span className="soft"> {line.note}</span>}
              </dd>
            </div>
          ))}
        </dl>
      )}
      {plan.cautions.map((caution) => (
        <Notice key={caution} kind="caution" live={false}>
          <p>{caution}</p>
        </Notice>
      ))}
    </section>
  )
}
