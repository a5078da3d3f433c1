'use client'
import { useRef, type ComponentProps, type MouseEvent } from 'react'
import { useFormStatus } from 'react-dom'
import { buttonClass, type ButtonVariant } from './button-class'
import { useDelayed } from './use-delayed'

type Props = ComponentProps<'button'> & {
  variant?: ButtonVariant
  /** Work is under way: taps are ignored, the button keeps focus, and after half a second it says so. */
  pending?: boolean
  pendingLabel?: string
}

/** A glove that bounces taps twice; the second tap within this time is not meant. */
const bounceMs = 400

export function Button({
  variant = 'plain',
  pending,
  pendingLabel = 'Working…',
  type = 'button',
  className,
  onClick,
  children,
  ...rest
}: Props) {
  const form = useFormStatus()
  const busy = pending ?? (type === 'submit' && form.pending)
  const late = useDelayed(busy)
  const lastTapMs = useRef(-Infinity)

  function tap(event: MouseEvent<HTMLButtonElement>) {
    if (busy || event.timeStamp - lastTapMs.current < bounceMs) {
      event.preventDefault()
      event.stopPropagation()
      return
    }
    lastTapMs.current = event.timeStamp
    onClick?.(event)
  }

  return (
    <button
      {...rest}
      type={type}
      aria-disabled={busy || rest['aria-disabled'] || undefined}
      aria-busy={busy || undefined}
      className={buttonClass(variant, className)}
      onClick={tap}
    >
      {late ? pendingLabel : children}
    </button>
  )
}
