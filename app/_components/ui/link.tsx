import type { ComponentProps } from 'react'

/**
 * A link within the app: a plain one, so that a list of two hundred costs the browser nothing. The shell opens it without
 * loading the page anew (`shell/follow-links.tsx`). Nothing is fetched ahead.
 */
export function Link(props: ComponentProps<'a'> & { href: string }) {
  return <a {...props} />
}
