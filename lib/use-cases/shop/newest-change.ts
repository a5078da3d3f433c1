import { newestChange as newest } from '@/lib/data/changes'

/** Number of the newest change, for pages that follow what others do. Says nothing of what it was. */
export const newestChange = (): Promise<number> => newest()
