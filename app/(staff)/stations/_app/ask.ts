import type { Refusal } from '@/lib/core/errors'
import type { Got } from './keeper'

const patienceMs = 15_000

/** Asks the server for data, whatever the network does. */
export async function ask(address: string): Promise<Got> {
  try {
    const response = await fetch(address, { cache: 'no-store', signal: AbortSignal.timeout(patienceMs) })
    if (response.ok) return { is: 'ok', body: await response.json() }
    if (response.status === 401) return { is: 'signed-out' }
    if (response.status >= 500 || response.status === 429 || response.status === 408) return { is: 'away' }
    const { refusal } = (await response.json()) as { refusal: Refusal }
    return { is: 'refused', refusal }
  } catch {
    return { is: 'away' }
  }
}
