import { Notice } from '@/app/_components/ui/notice'
import type { NextPass as Pass } from '@/lib/use-cases/stations/plan-at-step'
import styles from './step.module.css'

/** Read at arm's length with wet hands: the next thing to do, what is there now, what it should leave, what to do then. */
export function NextPass({ pass }: { pass: Pass }) {
  return (
    <div className={pass.stopAtThou === null ? 'stack' : styles.pass}>
      {pass.stopAtThou === null ? (
        <Notice kind={pass.verdict === 'stop' ? 'stop' : 'info'} title={pass.headline} live={false}>
          <p>{pass.why}</p>
          {pass.then !== '' && <p>{pass.then}</p>}
        </Notice>
      ) : (
        <p className={styles.depth}>
          <span className={styles.hugeLabel}>Stop at, from touch-off</span>
          <span className="figure-huge">{pass.stopAtThou.toFixed(1)}</span>{' '}
          <span className={styles.hugeUnit}>thou</span>
          {pass.thisPassThou !== null && <span className={styles.hugeNote}>{pass.headline}</span>}
          <span className={styles.then}>{pass.then}</span>
        </p>
      )}
      <div className="stack">
        {pass.figures.length > 0 && (
          <dl className={styles.figures}>
            {pass.figures.map((figure) => (
              <div key={figure.label}>
                <dt>{figure.label}</dt>
                <dd>
                  <span className="figure-large">{figure.value}</span>
                  {figure.note !== '' && <span className={styles.small}>{figure.note}</span>}
                </dd>
              </div>
            ))}
          </dl>
        )}
        {pass.stopAtThou !== null && <p>{pass.why}</p>}
        <p>{pass.countsFrom}</p>
        {pass.rate !== '' && <p className="soft">{pass.rate}</p>}
        {pass.spread !== '' && <p className="soft">{pass.spread}</p>}
      </div>
    </div>
  )
}
