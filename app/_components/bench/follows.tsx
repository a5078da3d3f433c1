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

/** All that follows from the cut, beside the picture of it. What is not known says what it needs, once a group. */
export function Follows({ groups, onNeed }: Props) {
  return (
    <div className={styles.groups}>
      {groups.map(({ title, lines }) => {
        const unknown = lines.filter(({ needs }) => needs.length > 0)
        return (
          <section key={title} aria-label={title}>
            <h3>{title}</h3>
            <dl className={styles.lines}>
              {lines
                .filter(({ needs }) => needs.length === 0)
                .map((line) => (
                  <div key={line.label} className={styles.line}>
                    <dt>{line.label}</dt>
                    <dd>
                      <Value line={line} />
                    </dd>
                  </div>
                ))}
              {unknown.length > 0 && (
                <div className={styles.line}>
                  <dt>{namedTogether(unknown)}</dt>
                  <dd>
                    <Needs keys={[...new Set(unknown.flatMap(({ needs }) => needs))]} onNeed={onNeed} />
                  </dd>
                </div>
              )}
            </dl>
          </section>
        )
      })}
    </div>
  )
}

const namedTogether = (lines: readonly ConsequenceLine[]): string =>
  lines.map(({ label }, at) => (at === 0 ? label : label.charAt(0).toLowerCase() + label.slice(1))).join(', ')

function Value({ line: { value, note, caution } }: { line: ConsequenceLine }) {
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
