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
