'use client'
import { useEffect, useId, useRef, type ReactNode } from 'react'
import { Button } from './button'
import styles from './dialog.module.css'

type Props = {
  open: boolean
  onClose: () => void
  title: ReactNode
  children: ReactNode
  closeLabel?: string
}

/**
 * Asks or shows one thing above the page. The browser's own dialog keeps focus inside, closes on Escape and gives focus
 * back to what opened it.
 */
export function Dialog({ open, onClose, title, children, closeLabel = 'Close' }: Props) {
  const ref = useRef<HTMLDialogElement>(null)
  const titleId = useId()

  useEffect(() => {
    const dialog = ref.current
    if (!dialog) return
    if (open && !dialog.open) dialog.showModal()
    if (!open && dialog.open) dialog.close()
  }, [open])

  return (
    <dialog ref={ref} aria-labelledby={titleId} className={styles.dialog} onClose={onClose}>
      {open && (
        <div className="stack">
          <h2 id={titleId}>{title}</h2>
          {children}
          {/* Last, so that the dialog opens with the first field in focus. */}
          <Button variant="quiet" onClick={onClose}>
            {closeLabel}
          </Button>
        </div>
      )}
    </dialog>
  )
}
