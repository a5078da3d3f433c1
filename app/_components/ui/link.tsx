import type { ComponentProps } from 'react'
import NextLink from 'next/link'

/**
 * A link within the app. Nothing is fetched ahead: a list of thirty heads would ask the server for thirty pages that
 * nobody opens, on the shop's network and at each look.
 */
export function Link(props: Omit<ComponentProps<typeof NextLink>, 'prefetch'>) {
  return <NextLink prefetch={false} {...props} />
}
