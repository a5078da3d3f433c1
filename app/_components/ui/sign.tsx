import styles from './sign.module.css'

export type SignKind = 'info' | 'caution' | 'stop' | 'done'

const outlines: Record<SignKind, string> = {
  info: 'M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18zM12 11v6M12 7v1',
  caution: 'M12 3.5 22 20.5H2zM12 10v5M12 17v1',
  stop: 'M8 2.5h8L21.5 8v8L16 21.5H8L2.5 16V8zM7.5 12h9',
  done: 'M4 13l5 5L20 6',
}

/** A shape that tells the kind without its colour; the words beside it carry the meaning. */
export function Sign({ kind }: { kind: SignKind }) {
  return (
    <svg className={styles.sign} viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={outlines[kind]} />
    </svg>
  )
}
