/** Runs once as the server starts, before it answers: what works beside the requests begins here. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME === 'nodejs') {
    const { notePeerAddresses } = await import('@/lib/web/peer-address')
    notePeerAddresses()
    if (process.env.NODE_ENV === 'production') {
      const { logWhatIsPrinted } = await import('@/lib/web/one-line')
      logWhatIsPrinted()
    }
    const { startMailWorker } = await import('@/lib/web/mail-worker')
    startMailWorker()
    const { startBackupWorker } = await import('@/lib/web/backup-worker')
    startBackupWorker()
  }
}
