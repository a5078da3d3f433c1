import type { Refusal } from '@/lib/core/errors'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'
import type { KeptDeed, NewDeed } from './kept'
import { nextBatch, pauseMs, settle } from './rules'
import type { Store } from './store'

/**
 * What the server said to a batch. `later`: no answer, or one that says "not now". `signed-out`: nobody is signed in here.
 * `unread`: it could not make sense of what was sent.
 */
export type PostAnswer =
  | { readonly kind: 'answered'; readonly answers: readonly OperationAnswer[] }
  | { readonly kind: 'later' | 'signed-out' }
  | { readonly kind: 'unread'; readonly refusal: Refusal }

export type OutboxState = {
  readonly deeds: readonly KeptDeed[]
  readonly sending: boolean
  /** The last try failed: the network or the server is away. */
  readonly away: boolean
  readonly signedOut: boolean
}

type Means = {
  readonly store: Pick<Store, 'deeds' | 'addDeed' | 'settleDeeds'>
  readonly personId: string
  readonly post: (deeds: readonly KeptDeed[]) => Promise<PostAnswer>
  readonly onState: (state: OutboxState) => void
  /** Answers of deeds that went through, in order. */
  readonly onAnswered?: (answers: readonly OperationAnswer[]) => void
  /** Calls back later; gives what stops it. */
  readonly later: (work: () => void, ms: number) => () => void
}

/**
 * Sends what was done here, in order, one batch at a time, and goes on until nothing is left: again after growing pauses
 * while the server does not answer, not at all while nobody is signed in.
 */
export class Sender {
  private deeds: readonly KeptDeed[] = []
  private sending = false
  private failures = 0
  private signedOut = false
  /** A batch that could not be read is sent deed by deed, so that only the one at fault is set aside. */
  private oneByOne = false
  private stopTimer: () => void = () => {}
  private closed = false

  constructor(private readonly means: Means) {}

  /** Kept before the network is tried. Rejects when this device cannot keep it. */
  async add(deed: NewDeed): Promise<void> {
    await this.means.store.addDeed(deed)
    await this.read()
    void this.send()
  }

  /** A deed that was refused and looked at, or one that its person takes back before it was sent. */
  async drop(seq: number): Promise<void> {
    await this.means.store.settleDeeds({ gone: [seq], changed: [] })
    await this.read()
  }

  /** Tries at once: the network is back, somebody signed in, the page is looked at again. */
  async wake(): Promise<void> {
    this.signedOut = false
    await this.read()
    await this.send()
  }

  close(): void {
    this.closed = true
    this.stopTimer()
  }

  private async read(): Promise<void> {
    this.deeds = await this.means.store.deeds()
    this.tell()
  }

  private tell(): void {
    const { deeds, sending, signedOut } = this
    if (!this.closed) this.means.onState({ deeds, sending, away: this.failures > 0, signedOut })
  }

  private async send(): Promise<void> {
    if (this.sending || this.signedOut || this.closed) return
    const batch = nextBatch(this.deeds, this.means.personId, this.oneByOne ? 1 : undefined)
    if (batch.length === 0) return
    this.stopTimer()
    this.sending = true
    this.tell()
    const answer = await this.means.post(batch).catch((): PostAnswer => ({ kind: 'later' }))
    await this.take(answer, batch)
    this.sending = false
    this.tell()
    if (this.failures > 0) this.stopTimer = this.means.later(() => void this.send(), pauseMs(this.failures))
    else await this.send()
  }

  private async take(answer: PostAnswer, batch: readonly KeptDeed[]): Promise<void> {
    if (answer.kind === 'signed-out') this.signedOut = true
    if (answer.kind === 'later') this.failures += 1
    if (answer.kind === 'unread') {
      const [only] = batch
      if (batch.length > 1 || !only) this.oneByOne = true
      else await this.takeAnswers([{ id: only.id, state: 'refused', refusal: answer.refusal }])
    }
    if (answer.kind === 'answered') await this.takeAnswers(answer.answers)
  }

  private async takeAnswers(answers: readonly OperationAnswer[]): Promise<void> {
    await this.settle(answers)
    // All of it is to be sent again: the server is there, and cannot do it now.
    this.failures = answers.some(({ state }) => state !== 'again') ? 0 : this.failures + 1
    this.means.onAnswered?.(answers)
  }

  private async settle(answers: readonly OperationAnswer[]): Promise<void> {
    // What was added while the batch was under way is there too: its sight of the step grows as well.
    await this.means.store.settleDeeds(settle(await this.means.store.deeds(), answers))
    await this.read()
  }
}
