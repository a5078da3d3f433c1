import type { ReactNode, Ref } from 'react'
import styles from './notice.module.css'
import { Sign } from './sign'

export type NoticeKind = 'info' | 'caution' | 'stop'

const kinds = {
  info: { title: 'Note', role: 'status' },
  caution: { title: 'Caution', role: 'status' },
  stop: { title: 'Stop', role: 'alert' },
} as const

type Props = {
  kind?: NoticeKind
  title?: ReactNode
  children: ReactNode
  /** false: stands on the page from the start, so nothing needs to be announced. */
  live?: boolean
  /** To move focus there. */
  ref?: Ref<HTMLDivElement>
}

export function Notice({ kind = 'info', title, children, live = true, ref }: Props) {
  return (
    <div
      ref={ref}
      tabIndex={ref ? -1 : undefined}
      role={live ? kinds[kind].role : undefined}
      className={`${styles.notice} ${styles[kind]}`}
    >
      <p className={styles.title}>
        <Sign kind={kind} /> {title ?? kinds[kind].title}
      </p>
      <div className="stack">{children}</div>
    </div>
  )
}
