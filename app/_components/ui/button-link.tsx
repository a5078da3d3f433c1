import { Link } from './link'
import type { ComponentProps } from 'react'
import { buttonClass, type ButtonVariant } from './button-class'

/** A link that is as large as a button: for going somewhere, never for changing something. */
export function ButtonLink({
  variant = 'plain',
  className,
  ...rest
}: ComponentProps<typeof Link> & { variant?: ButtonVariant }) {
  return <Link {...rest} className={buttonClass(variant, className)} />
}
