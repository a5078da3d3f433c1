import { Notice } from '@/app/_components/ui/notice'
import type { StepId } from '@/lib/core/route/step-ids'
import type { PlanAtStep as Plan } from '@/lib/use-cases/stations/plan-at-step'
import { CutTable, NextPass } from './later'
import styles from './step.module.css'

/** The plan's figures for this step; at the deck mill one huge figure. */
export function PlanAtStep({ plan, visitId, stepId }: { plan: Plan; visitId: string; stepId: StepId }) {
  const { pass, huge, cut, lines, cautions } = plan
  if (!pass && !huge && !cut && lines.length + cautions.length === 0) return null
  return (
    <section aria-label="Plan" className="stack">
      {pass && <NextPass pass={pass} />}
      {huge && (
        <p className={styles.huge}>
          <span className={styles.hugeLabel}>{huge.label}</span>
          <span className="figure-huge">{huge.value}</span> <span className={styles.hugeUnit}>{huge.unit}</span>
          {huge.note !== '' && <span className={styles.hugeNote}>{huge.note}</span>}
        </p>
      )}
      {cut && <CutTable cut={cut} visitId={visitId} stepId={stepId} />}
      {lines.length > 0 && (
        <dl className={styles.lines}>
          {lines.map((line) => (
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
      {cautions.map((caution) => (
        <Notice key={caution} kind="caution" live={false}>
          <p>{caution}</p>
        </Notice>
      ))}
    </section>
  )
}
