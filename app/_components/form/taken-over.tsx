'use client'
import { useSyncExternalStore, type ReactNode } from 'react'
import styles from './taken-over.module.css'

const never = () => () => undefined

/**
 * Fields that can be typed into once the script of the page has taken over what the server drew. What is typed before
 * would be put back to what the server drew, and an amount would go out that nobody meant.
 */
export function TakenOver({ children }: { children: ReactNode }) {
  const takenOver = useSyncExternalStore(
    never,
    () => true,
    () => false,
  )
  return (
    <fieldset className={styles.fields} disabled={!takenOver}>
      {children}
    </fieldset>
  )
}
