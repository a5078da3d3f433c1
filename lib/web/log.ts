/** The one log of the process. */
export { log } from '@/lib/data/log'
