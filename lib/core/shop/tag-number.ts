import { ok, refuse, type Result } from '../errors'

export type TagNumber = {
  /** As it reads on the brass: "T-0412". */
  readonly number: string
  /** The figures in it, to sort and to find by; 0 when there are none. */
  readonly sortNumber: number
}

/** The tag of a running number: T- and at least four digits. Example: 412 → "T-0412". */
export const tagOf = (running: number): string => `T-${String(running).padStart(4, '0')}`

/** A tag as typed or scanned; bare figures mean the shop's own series: "412", "t-412" and "T-0412" are one tag. */
export function parseTag(text: string): Result<TagNumber> {
  const typed = text.trim().toUpperCase()
  const running = /^(?:T-?)?(\d{1,9})$/.exec(typed)
  if (running) return ok({ number: tagOf(Number(running[1])), sortNumber: Number(running[1]) })
  if (!/^[A-Z0-9][A-Z0-9-]{0,15}$/.test(typed)) {
    return refuse('unreadable', 'A tag is up to 16 letters, figures and dashes, such as T-0412.')
  }
  return ok({ number: typed, sortNumber: Number(/(\d{1,9})$/.exec(typed)?.[1] ?? 0) })
}

type Worn = { readonly number: string; readonly to?: Date | null }

/**
 * What a head is called everywhere: the tag it wears, else the last it wore (tags newest last), else its place on the job
 * while it has none: "26-0117 head 2".
 */
export const headName = (tags: readonly Worn[], jobNumber: string, position: number): string =>
  (tags.find((tag) => !tag.to) ?? tags.at(-1))?.number ?? `${jobNumber} head ${position}`

type LabelledHead = {
  readonly position: number
  readonly job: { readonly number: string }
  readonly head: { readonly tags: readonly Worn[] }
}

/** `headName` of a head's visit. */
export const headLabel = ({ head, job, position }: LabelledHead): string => headName(head.tags, job.number, position)

/** Whether a head's name is a tag: no tag has a space in it. */
export const isTag = (name: string): boolean => name !== '' && !name.includes(' ')

/**
 * What a scanner reads from a tag is a link that ends in /t/<tag>; anything else is given back as it came. The front of
 * the link may be missing: it is what was typed before the Find box had the focus.
 */
export function tagText(scanned: string): string {
  const link = /^\S*\/t\/([^/?#\s]+)\/?$/i.exec(scanned.trim())
  return link?.[1] === undefined ? scanned.trim() : decodePart(link[1])
}

function decodePart(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}
