import type { Refusal } from '@/lib/core/errors'
import type { SentOperation } from '@/lib/schemas/operation'

/** What is sent as it is, or a photo, which goes up by itself. */
export type DeedKind = SentOperation['kind'] | 'photo'

/** A deed as this device keeps it until the shop's record has it. */
export type KeptDeed = Omit<SentOperation, 'kind'> & {
  readonly kind: DeedKind
  /** Place in the order it was done on this device. */
  readonly seq: number
  /** What it was, for the person: "T-0412: tick, flat cut". */
  readonly words: string
  /** The picture of a photo. */
  readonly file?: Blob
  /** Why it was not taken; such a deed is set aside until a person has looked. */
  readonly refusal?: Refusal
}

export type NewDeed = Omit<KeptDeed, 'seq' | 'refusal'>
