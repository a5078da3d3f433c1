export type WhyLeft = 'idle' | 'switched person'

/**
 * Ends the session on this tablet and shows the rack of time cards. What is typed stays in its person's drafts. False when
 * the server cannot be reached: the session is still open there.
 */
export async function leaveTablet(why: WhyLeft): Promise<boolean> {
  const answer = await fetch('/api/tablet/leave', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ why }),
  }).catch(() => null)
  if (!answer?.ok) return false
  await import('../outbox/forget').then(({ forgetWhatWasRead }) => forgetWhatWasRead()).catch(() => {})
  // A whole new page: nothing of this person stays in memory.
  window.location.assign('/sign-in')
  return true
}
