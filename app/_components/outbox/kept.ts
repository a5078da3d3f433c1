import type { Refusal } from '@/lib/core/errors'
import type { SentOperation } from '@/lib/schemas/operation'

/** A deed as this device keeps it until the shop's record has it. */
export type KeptDeed = SentOperation & {
  /** Place in the order it was done on this device. */
  readonly seq: number
  /** What it was, for the person: "T-0412: tick, flat cut". */
  readonly words: string
  /** Why it was not taken; such a deed is set aside until a person has looked. */
  readonly refusal?: Refusal
}

export type NewDeed = Omit<KeptDeed, 'seq' | 'refusal'>
