import type { Refusal } from '@/lib/core/errors'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'
import type { KeptDeed, NewDeed } from './kept'
import { postDeeds } from './post'
import { Sender, type OutboxState } from './sender'
import { openStore, type Store } from './store'

/** What became of a deed as far as its person waits for it. `kept`: here, and sent when the server answers. */
export type Outcome =
  | { readonly is: 'done'; readonly value: unknown }
  | { readonly is: 'refused'; readonly refusal: Refusal }
  | { readonly is: 'kept' }

export type SeenState = OutboxState & {
  /** Deeds that are kept here and not sent, and those that were not taken; none whose person waits for the answer to it. */
  readonly unsent: readonly KeptDeed[]
  readonly aside: readonly KeptDeed[]
  /** How many deeds were answered after their person had gone on, so that the screens do not know of it. */
  readonly late: number
}

/** So long a person waits for the server before the deed counts as kept here. */
const patienceMs = 4000

const quiet: OutboxState = { deeds: [], sending: false, away: false, signedOut: false }
export const nothingDone: SeenState = { ...quiet, unsent: [], aside: [], late: 0 }

/** The very list that is shown, while the deeds are the same: what draws it then leaves it as it is. */
const asBefore = <Deed>(shown: readonly Deed[], now: readonly Deed[]): readonly Deed[] =>
  shown.length === now.length && now.every((deed, place) => deed === shown[place]) ? shown : now

/** The deeds of this device: kept first, then sent. One for each page. */
export class Outbox {
  private state = nothingDone
  private lasting = true
  private readonly listeners = new Set<() => void>()
  private readonly waiting = new Map<string, (outcome: Outcome) => void>()
  private readonly sender: Promise<Sender>
  readonly store: Promise<Store | null>

  constructor(personId: string, open: () => Promise<Store> = openStore, post = postDeeds) {
    this.store = open().catch(() => null)
    this.sender = this.store.then(async (store) => {
      if (!store) this.lasting = false
      const sender = new Sender({
        store: store ?? (await import('./memory-store')).memoryStore(),
        personId,
        post,
        onState: (state) => this.take(state),
        onAnswered: (answers) => answers.forEach((answer) => this.tell(answer)),
        later: (work, ms) => {
          const timer = setTimeout(work, ms)
          return () => clearTimeout(timer)
        },
      })
      void sender.wake()
      return sender
    })
  }

  readonly snapshot = (): SeenState => this.state

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener)
    return () => this.listeners.delete(listener)
  }

  /** False: this browser keeps nothing, so what is done here lasts as long as the page. */
  get keeps(): boolean {
    return this.lasting
  }

  /** Keeps the deed, sends it, and says what became of it. Rejects when it cannot be kept. */
  async add(deed: NewDeed): Promise<Outcome> {
    const sender = await this.sender
    const outcome = new Promise<Outcome>((resolve) => this.waiting.set(deed.id, resolve))
    const timer = setTimeout(() => this.settle(deed.id, { is: 'kept' }), patienceMs)
    try {
      await sender.add(deed)
      const told = await outcome
      if (told.is === 'refused') await this.dropById(deed.id)
      return told
    } finally {
      clearTimeout(timer)
      this.waiting.delete(deed.id)
      this.take(this.state)
    }
  }

  /** A deed that was set aside and looked at. */
  async drop(seq: number): Promise<void> {
    await (await this.sender).drop(seq)
  }

  /** Tries at once: somebody signed in, the network is back. */
  async wake(): Promise<void> {
    await (await this.sender).wake()
  }

  close(): void {
    void this.sender.then((sender) => sender.close())
  }

  private async dropById(id: string): Promise<void> {
    const deed = this.state.deeds.find((one) => one.id === id)
    if (deed) await this.drop(deed.seq)
  }

  private take(state: OutboxState, late = this.state.late): void {
    const left = state.deeds.filter(({ id }) => !this.waiting.has(id))
    const unsent = asBefore(
      this.state.unsent,
      left.filter(({ refusal }) => refusal === undefined),
    )
    this.state = { ...state, unsent, aside: left.filter((deed) => !unsent.includes(deed)), late }
    if (state.away || state.signedOut) for (const id of this.waiting.keys()) this.settle(id, { is: 'kept' })
    for (const listener of this.listeners) listener()
  }

  private tell(answer: OperationAnswer): void {
    if (!this.waiting.has(answer.id) && answer.state !== 'again') this.take(this.state, this.state.late + 1)
    if (answer.state === 'done') this.settle(answer.id, { is: 'done', value: answer.value })
    if (answer.state === 'refused') this.settle(answer.id, { is: 'refused', refusal: answer.refusal })
    if (answer.state === 'again') this.settle(answer.id, { is: 'kept' })
  }

  private settle(id: string, outcome: Outcome): void {
    this.waiting.get(id)?.(outcome)
  }
}
