import { Link } from '@/app/_components/ui/link'
import { stepHref } from '@/app/(staff)/stations/step-href'
import { sameKey } from '@/lib/core/route/keys'
import type { RouteStep } from '@/lib/core/route/types'
import type { VisitView } from '@/lib/use-cases/heads/see-head'
import styles from './route.module.css'
import { lackText } from '@/lib/words/lacks'
import { orderText, reasonText, waitText, whyText } from '@/lib/words/route'

/** Every step, with why it is there and what became of it. */
export function Route({ visit }: { visit: VisitView }) {
  return (
    <section className="stack" aria-label="Route">
      <h3>Route</h3>
      <ol className={styles.route}>
        {visit.route.map((step) => (
          <li key={`${step.stepId}${step.occurrence}${step.orderId ?? ''}`} data-state={step.state}>
            <span className={styles.state}>{step.state}</span>
            <span className={styles.what}>
              <Link href={stepHref(step.station, visit.visitId, step)}>{step.label}</Link>
              {step.isNew && <strong> new</strong>}
              <span className="soft"> {noteOf(step)}</span>
              {outAt(visit, step).map((words) => (
                <span key={words} className={styles.out}>
                  Out of tolerance: {words}
                </span>
              ))}
            </span>
            <span className="soft">{step.byVendor ? orderText(step.byVendor) : visit.stationNames[step.station]}</span>
          </li>
        ))}
      </ol>
    </section>
  )
}

/** What was measured there and is out of tolerance, as long as nobody waived it. */
const outAt = ({ gaps }: VisitView, step: RouteStep): string[] =>
  gaps.filter(({ what, step: at }) => what === 'tolerance' && sameKey(at, step)).map(({ lack }) => lackText(lack))

function noteOf(step: RouteStep): string {
  if (step.reason !== null) return reasonText(step.reason)
  if (step.state === 'to do' && step.waitsFor.length > 0) return `waiting for ${step.waitsFor.map(waitText).join(', ')}`
  return whyText(step.why)
}
