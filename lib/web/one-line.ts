import { errorForLog } from '@/lib/data/error-for-log'
import { log } from './log'

/** What a stranger or an old page sent, and no fault of the app's. */
const theirs =
  /Server Action|Server Reference|parse body as FormData|Unexpected end of form|Body exceeded|NEXT_|aborted|ECONNRESET|header is invalid/

/** By which the page of an error names it to the person. */
const digestOf = (error: unknown): string | undefined =>
  typeof error === 'object' && error !== null && 'digest' in error ? String(error.digest) : undefined

/**
 * What the framework prints goes into the log, one line of JSON each: what was sent broken without a stack, and nothing
 * of what it held. For the production server: in development a person reads the console.
 */
export function logWhatIsPrinted(): void {
  console.error = (...said: readonly unknown[]) => {
    const error = said.find((one) => one instanceof Error)
    const text = (error?.message ?? said.filter((one) => typeof one === 'string').join(' ')).split('\n')[0] ?? ''
    if (theirs.test(text)) log.warn({ event: 'broken request', why: theirs.exec(text)?.[0] }, 'framework')
    else
      log.error(
        {
          event: 'framework',
          digest: digestOf(error),
          err: error ? errorForLog(error) : { message: text.slice(0, 300) },
        },
        'framework',
      )
  }
}
