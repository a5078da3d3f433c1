/** What the log keeps of an error. */
export type LoggedError = { readonly name: string; readonly message: string; readonly stack: string }

const longest = 300

/**
 * An error as the log may hold it. The database's client writes into its message what it was asked to store, passwords'
 * hashes among it: of such a one only the last line is kept, which says what went wrong. A stack begins with the message
 * again: of it only the places are kept.
 */
export function errorForLog(error: unknown): LoggedError {
  if (!(error instanceof Error)) return { name: typeof error, message: '', stack: '' }
  const stack = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line))
  return { name: error.name, message: messageOf(error), stack: stack.slice(0, 12).join('\n') }
}

function messageOf({ name, message }: Error): string {
  if (/^PrismaClientValidation/.test(name)) return ''
  const lines = message.split('\n').filter((line) => line.trim() !== '')
  const said = name.startsWith('PrismaClient') ? lines.at(-1) : lines[0]
  return (said ?? '').trim().slice(0, longest)
}
