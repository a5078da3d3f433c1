'use client'
import { Fragment } from 'react'
import { isFigureKey, figureName } from '@/lib/core/options/figure-names'
import type { ConsequenceGroup, ConsequenceLine } from '@/lib/core/options/consequence-lines'
import { Sign } from '@/app/_components/ui/sign'
import styles from './follows.module.css'

type Props = {
  groups: readonly ConsequenceGroup[]
  /** Leads to the field that gives a figure; left out: the figure is only named. */
  onNeed?: (key: string) => void
}

/** All that follows from the cut, beside the picture of it. What is not known says what it needs. */
export function Follows({ groups, onNeed }: Props) {
  return (
    <div className={styles.groups}>
      {groups.map(({ title, lines }) => (
        <section key={title} aria-label={title}>
          <h3>{title}</h3>
          <dl className={styles.lines}>
            {lines.map((line) => (
              <div key={line.label} className={styles.line}>
                <dt>{line.label}</dt>
                <dd>
                  <Value line={line} onNeed={onNeed} />
                </dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </div>
  )
}

function Value({
  line: { value, note, needs, caution },
  onNeed,
}: { line: ConsequenceLine } & Pick<Props, 'onNeed'>) {
  if (needs.length > 0) return <Needs keys={needs} onNeed={onNeed} />
  return (
    <>
      {value !== '' && (
        <span className={styles.value}>
          {caution && (
            <>
              <Sign kind="caution" />{' '}
            </>
          )}
          {value}
        </span>
      )}
      {note !== '' && <span className={styles.note}>{note}</span>}
    </>
  )
}

function Needs({ keys, onNeed }: { keys: readonly string[]; onNeed?: (key: string) => void }) {
  return (
    <span className={styles.needs}>
      needs{' '}
      {keys.map((key, at) => (
        <Fragment key={key}>
          {at > 0 && ', '}
          {onNeed && isFigureKey(key) ? (
            <button type="button" className={styles.need} onClick={() => onNeed(key)}>
              {figureName(key)}
            </button>
          ) : (
            figureName(key)
          )}
        </Fragment>
      ))}
    </span>
  )
}
