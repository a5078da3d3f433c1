'use client'
import type { ComponentProps, MouseEvent } from 'react'
import { buttonClass, type ButtonVariant } from '@/app/_components/ui/button-class'

type Props = Omit<ComponentProps<'a'>, 'href'> & { href: string; variant?: ButtonVariant }

/** A link between the screens of the station app: nothing is fetched for it, so it works without the network. */
export function StationLink({ href, variant, className, onClick, ...rest }: Props) {
  function go(event: MouseEvent<HTMLAnchorElement>) {
    onClick?.(event)
    const elsewhere = event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey
    if (event.defaultPrevented || elsewhere) return
    event.preventDefault()
    window.history.pushState(null, '', href)
    window.scrollTo(0, 0)
  }
  const classes = variant ? buttonClass(variant, className) : className
  return <a {...rest} href={href} className={classes} onClick={go} />
}
