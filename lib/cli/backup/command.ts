/** Runs what a command does: its answer on stdout, a refusal as one line on stderr. */
export async function command(work: () => Promise<string>): Promise<void> {
  try {
    process.stdout.write(`${await work()}\n`)
  } catch (error) {
    const isForeseen = error instanceof Error && error.name === 'Error'
    process.stderr.write(`${isForeseen ? error.message : String((error as Error).stack)}\n`)
    process.exitCode = 1
  }
}

export const say = (words: string): void => void process.stderr.write(`• ${words}\n`)

/** Example: 12345678 → "12.3 MB". */
export function sizeWords(bytes: number): string {
  const [unit, by] = bytes >= 1e9 ? ['GB', 1e9] : bytes >= 1e6 ? ['MB', 1e6] : ['kB', 1e3]
  return `${(bytes / by).toFixed(1)} ${unit}`
}
