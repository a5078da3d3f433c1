import { Notice } from '@/app/_components/ui/notice'
import type { NextPass as Pass } from '@/lib/use-cases/stations/next-pass-at-mill'
import styles from './step.module.css'

/** Read at arm's length with wet hands: how deep to stop, what is there now, what it should leave, what to do then. */
export function NextPass({ pass }: { pass: Pass }) {
  return (
    <>
      {pass.stopAtThou === null ? (
        <Notice
          kind={pass.verdict === 'stop' ? 'stop' : 'info'}
          title={pass.verdict === 'stop' ? 'Do not cut' : 'Nothing to cut'}
          live={false}
        >
          <p>{pass.why}</p>
        </Notice>
      ) : (
        <p className={styles.huge}>
          <span className={styles.hugeLabel}>Stop at, from touch-off</span>
          <span className="figure-huge">{pass.stopAtThou.toFixed(1)}</span>{' '}
          <span className={styles.hugeUnit}>thou</span>
          {pass.thisPassThou !== null && (
            <span className={styles.hugeNote}>this pass takes {pass.thisPassThou.toFixed(1)}</span>
          )}
          <span className={styles.then}>{pass.then}</span>
          <span className={styles.hugeNote}>{pass.why}</span>
        </p>
      )}
      {pass.figures.length > 0 && (
        <dl className={styles.figures}>
          {pass.figures.map((figure) => (
            <div key={figure.label}>
              <dt>{figure.label}</dt>
              <dd>
                {figure.value}
                {figure.note !== '' && <span className={styles.small}>{figure.note}</span>}
              </dd>
            </div>
          ))}
        </dl>
      )}
      {pass.rate !== '' && <p className="soft">{pass.rate}</p>}
    </>
  )
}
