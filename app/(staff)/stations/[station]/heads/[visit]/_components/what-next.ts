/** Where to go on: the next head here, and what is next on this one; each null when there is none. */
export type WhatNext = {
  readonly head: { readonly words: string; readonly href: string } | null
  readonly step: { readonly words: string; readonly href: string } | null
  readonly queueHref: string
}
