const place = 'brasstag-touched'

/** When the tablet was last touched, in any of its windows; kept on the device so that they agree. Clock of the device. */
export class LastTouch {
  private ownMs = Date.now()

  note(): void {
    this.ownMs = Date.now()
    try {
      localStorage.setItem(place, String(this.ownMs))
    } catch {
      // A device that keeps nothing has one window that counts.
    }
  }

  /** How long ago, ms. A clock that was set back counts from now. */
  agoMs(): number {
    const now = Date.now()
    if (this.ownMs > now) this.ownMs = now
    const elsewhere = this.elsewhereMs()
    return now - (elsewhere <= now ? Math.max(this.ownMs, elsewhere) : this.ownMs)
  }

  private elsewhereMs(): number {
    try {
      return Number(localStorage.getItem(place)) || 0
    } catch {
      return 0
    }
  }
}
