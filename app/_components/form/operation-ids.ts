import { newOperationId } from './operation-id'
import { saveDraft, loadDraft, clearDraft } from './draft-store'

type Attempt = { content: string; op: string }

/**
 * The operation id of a change. The same content sent again, because the answer to it never came, goes out under the same
 * id, so that it cannot take effect twice; other content, or the same after an answer, gets a new one. Under a key the
 * open attempt outlives the page.
 */
export class OperationIds {
  private open: Attempt | null = null
  private key: string | null = null

  keepUnder(key: string): void {
    this.key = `attempt ${key}`
    this.open ??= readAttempt(loadDraft(this.key))
  }

  idFor(input: unknown): string {
    const content = JSON.stringify(input)
    if (this.open?.content !== content) this.open = { content, op: newOperationId() }
    if (this.key) saveDraft(this.key, JSON.stringify(this.open))
    return this.open.op
  }

  answered(): void {
    this.open = null
    if (this.key) clearDraft(this.key)
  }
}

function readAttempt(text: string | null): Attempt | null {
  const value = parseJson(text)
  if (typeof value !== 'object' || value === null || !('content' in value) || !('op' in value)) return null
  const { content, op } = value
  return typeof content === 'string' && typeof op === 'string' ? { content, op } : null
}

/** The value of a JSON text; null when it is none. */
export function parseJson(text: string | null): unknown {
  if (text === null) return null
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
