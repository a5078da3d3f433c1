import styles from './button.module.css'

export type ButtonVariant = 'main' | 'plain' | 'stop' | 'quiet'

/** Looks like a button. */
export const buttonClass = (variant: ButtonVariant, className?: string): string =>
  [styles.button, styles[variant], className].filter(Boolean).join(' ')
