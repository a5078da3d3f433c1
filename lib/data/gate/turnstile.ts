export type Leave = () => void

/** One at a time, in the order of asking. `enter` resolves when it is the caller's turn; `leave` lets the next one in. */
export class Turnstile {
  #last: Promise<void> = Promise.resolve()

  async enter(): Promise<Leave> {
    const before = this.#last
    let leave: Leave = () => undefined
    this.#last = new Promise<void>((resolve) => {
      leave = resolve
    })
    await before
    return leave
  }

  async pass<T>(work: () => Promise<T>): Promise<T> {
    const leave = await this.enter()
    try {
      return await work()
    } finally {
      leave()
    }
  }
}
