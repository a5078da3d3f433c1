import pino from 'pino'

/** JSON lines. No secret, token, cookie or contact data is ever passed to it. */
export const log = pino({ level: process.env.BRASSTAG_LOG ?? 'info', base: null })
