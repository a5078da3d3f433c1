import { attemptDraft, type AttemptDraft } from './draft-shapes'
import { clearDraft, loadDraft, saveDraft } from './draft-store'
import { newId } from './new-id'

export type ActionCall<Input> = { readonly op: string; readonly input: Input }

/** The record as the person saw it: the number of its last event, or its version. */
export type Sight = {
  readonly seen?: number | undefined
  readonly since?: number | undefined
  readonly version?: number
}

const sights: readonly string[] = ['seen', 'since', 'version'] satisfies readonly (keyof Sight)[]

/** What a person asked for. What they saw is left out: a reload sees more, and asks for the same. */
const contentOf = (input: unknown): string =>
  JSON.stringify(input, (key, value: unknown) => (sights.includes(key) ? undefined : value))

const seenIn = (input: unknown): number | undefined =>
  typeof input === 'object' && input !== null && 'seen' in input && typeof input.seen === 'number'
    ? input.seen
    : undefined

/** `input` as it was seen when the attempt before it went out: what that one did, nobody was told. */
function seenAsBefore<Input>(input: Input, before: unknown): Input {
  const [now, then] = [seenIn(input), seenIn(before)]
  return now === undefined || then === undefined ? input : { ...input, seen: Math.min(now, then) }
}

/**
 * Operation ids of changes. Content without an answer is sent again as it was, under its id, so that it takes effect
 * once; other content, or the same after an answer, gets a new id. After an attempt without an answer a page may show
 * more than the person was told of, so what is sent next says what was seen before it: the server then knows what it has
 * already. Under a key the open attempt outlives the page.
 */
export class OperationIds {
  private open: { readonly name: string; readonly call: ActionCall<unknown> } | null = null
  private key: string | null = null
  private loaded: Promise<void> = Promise.resolve()

  keepUnder(key: string): void {
    this.key = `attempt ${key}`
    this.loaded = loadDraft(this.key, attemptDraft).then((kept) => {
      if (kept) this.open ??= { name: kept.name, call: { op: kept.op, input: kept.input } }
    })
  }

  /** `name` tells deeds with the same content apart: "tick", "start". */
  async callFor<Input>(input: Input, name = ''): Promise<ActionCall<Input>> {
    await this.loaded
    const { open } = this
    const same = open !== null && open.name === name && contentOf(open.call.input) === contentOf(input)
    const call = same
      ? (open.call as ActionCall<Input>)
      : { op: newId(), input: open === null ? input : seenAsBefore(input, open.call.input) }
    this.open = { name, call }
    if (this.key) saveDraft<AttemptDraft>(this.key, { shape: 1, name, ...call })
    return call
  }

  answered(): void {
    this.open = null
    if (this.key) clearDraft(this.key)
  }
}
