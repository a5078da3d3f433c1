'use client'
import type { ReactNode } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Dock, DockedKeys, DockPane } from '@/app/_components/keypad/dock'
import styles from './screen.module.css'
import { useHand } from './use-hand'

type Props = {
  label: string
  /** Figures are typed here: the keypad is docked. */
  withKeys: boolean
  /** Something is typed: what others change does not come under the fingers. */
  isEditing?: boolean
  /** The button of the one deed, and what is beside it. */
  commit: ReactNode
  /** What was just done, or what stands in its way. */
  said?: ReactNode
  children: ReactNode
}

/** One step on one screen: what scrolls, the one keypad, and the one button that is always in view. */
export function ScreenFrame({ label, withKeys, isEditing = false, commit, said, children }: Props) {
  const { hand, turnHand } = useHand()
  return (
    <Dock>
      <section
        aria-label={label}
        className={styles.screen}
        data-keys={withKeys || undefined}
        data-hand={hand}
        data-hands-on={isEditing ? '' : undefined}
      >
        <DockPane className={styles.pane}>
          {children}
          {withKeys && (
            <div>
              <Button variant="quiet" onClick={turnHand}>
                Keypad on the {hand === 'left' ? 'right' : 'left'}
              </Button>
            </div>
          )}
        </DockPane>
        <div className={styles.dock}>
          {withKeys && <DockedKeys />}
          <div className={styles.end}>
            {said}
            <div className={styles.commit}>{commit}</div>
          </div>
        </div>
      </section>
    </Dock>
  )
}
