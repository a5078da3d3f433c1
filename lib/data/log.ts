import pino from 'pino'

/** A log that cannot be written (the disk under it is full) stops nothing: it keeps its last lines and tries again. */
const out = pino.destination({ dest: 1, sync: true, maxLength: 1_000_000 })
out.on('error', () => undefined)

/** JSON lines. No secret, token, cookie or contact data is ever passed to it. */
export const log = pino({ level: process.env.BRASSTAG_LOG ?? 'info', base: null }, out)
