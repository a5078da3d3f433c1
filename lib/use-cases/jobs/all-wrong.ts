import { RefusedError } from '@/lib/core/errors'

/** Gathers what is wrong with the fields of one form, so that all of it is said at once. */
export class AllWrong {
  private readonly fields: Record<string, string> = {}
  private first: RefusedError | null = null

  /** What `work` gives; undefined when it refused a field. Any other refusal goes on at once. */
  async of<T>(work: () => T | Promise<T>): Promise<T | undefined> {
    try {
      return await work()
    } catch (error) {
      if (!(error instanceof RefusedError) || error.refusal.code !== 'invalid' || !error.refusal.fields) throw error
      this.first ??= error
      Object.assign(this.fields, error.refusal.fields)
      return undefined
    }
  }

  /** Refuses with every field that is wrong; nothing, when none is. */
  refuse(): void {
    const many = Object.keys(this.fields).length
    if (this.first === null) return
    if (many === 1) throw this.first
    throw new RefusedError({ code: 'invalid', message: `${many} fields need a change.`, fields: this.fields })
  }
}
