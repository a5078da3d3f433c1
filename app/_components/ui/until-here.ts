/** So long until what could not be fetched is asked for again, unless the network says sooner that it is back. */
const againMs = 10_000

const nextChance = () =>
  new Promise<void>((resolve) => {
    const go = () => {
      clearTimeout(timer)
      removeEventListener('online', go)
      resolve()
    }
    const timer = setTimeout(go, againMs)
    addEventListener('online', go)
  })

/**
 * Fetches a part of a page, again and again until it is here. A part that fails takes the page down with it, and whoever
 * stands there without a network has done nothing wrong: the rest of the page is all that is needed meanwhile.
 */
export async function untilHere<Part>(fetchPart: () => Promise<Part>): Promise<Part> {
  for (;;) {
    try {
      return await fetchPart()
    } catch (error) {
      if (typeof window === 'undefined') throw error
      await nextChance()
    }
  }
}
