const undone = ' is not done'

/**
 * What was not done of a head that went back, as it was written down before it was shortened by its codes: a step that
 * was not done stands for the readings it would have had. Later ones end in “: not done” and come through as they are.
 */
export function notDoneInShort(messages: readonly string[]): string[] {
  const steps = messages
    .filter((message) => message.endsWith(undone))
    .map((message) => message.slice(0, -undone.length))
  const covered = (message: string): boolean =>
    steps.some((label) => message.startsWith(`${label}: `)) ||
    (message.endsWith(' has no finished cc') && steps.includes('Measure finished'))
  return messages.filter((message) => !covered(message))
}
