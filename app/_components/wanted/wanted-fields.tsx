import type { ReactNode } from 'react'
import { wantedFigures, type WantedKey } from '@/lib/core/wanted/figures'
import type { Quantity } from '@/lib/core/units/quantities'
import styles from './wanted.module.css'

export type WantedFieldWords = { label: string; quantity: Quantity; hint?: string | undefined }

type Props<K extends WantedKey> = {
  keys: readonly K[]
  /** What holds where a field is left empty. */
  hints?: Readonly<Partial<Record<K, string>>>
  figure: (key: K, words: WantedFieldWords) => ReactNode
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** A field for each wanted figure, intake beside exhaust; all of them may stay empty. */
export function WantedFields<K extends WantedKey>({ keys, hints, figure }: Props<K>) {
  return (
    <div className={styles.fields}>
      {keys.map((key) => {
        const { label, quantity } = wantedFigures[key]
        return figure(key, { label: capital(label), quantity, hint: hints?.[key] })
      })}
    </div>
  )
}
