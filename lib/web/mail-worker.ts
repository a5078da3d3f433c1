import { randomUUID } from 'node:crypto'
import { log } from '@/lib/data/log'
import { sendQueued, type Sender } from '@/lib/use-cases/messages/send-queued'

const pauseMs = 3000

// On globalThis, because the server may load this module more than once while there must be one worker.
const home = globalThis as typeof globalThis & { brasstagMailWorker?: () => void }

/**
 * Looks into the outbox every few seconds for as long as the server runs. Gives back how to stop it. Whatever goes wrong
 * is logged by its name alone, since an error of the mail server may hold an address, and tried again.
 */
export function startMailWorker(sender: Partial<Sender> = {}, everyMs = pauseMs): () => void {
  if (home.brasstagMailWorker) return home.brasstagMailWorker
  const whole: Sender = { worker: randomUUID(), now: () => new Date(), ...sender }
  let timer: NodeJS.Timeout | undefined
  let isStopped = false
  async function look(): Promise<void> {
    try {
      await sendQueued(whole)
    } catch (error) {
      log.error({ error: error instanceof Error ? error.name : 'unknown' }, 'outbox')
    }
    if (!isStopped) timer = setTimeout(look, everyMs).unref()
  }
  timer = setTimeout(look, everyMs).unref()
  home.brasstagMailWorker = () => {
    isStopped = true
    clearTimeout(timer)
    delete home.brasstagMailWorker
  }
  return home.brasstagMailWorker
}
