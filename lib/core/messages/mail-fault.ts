/** Why a mail was not taken, as far as it decides what to do next. */
export const mailFaults = [
  'no-address', // the customer has none: it is not tried
  'address-refused', // the server will never deliver to this address
  'mail-refused', // the server will never take this mail
  'try-later', // the server asked for another try
  'wrong-password',
  'certificate', // the server could not prove who it is
  'no-encryption', // the server offers no TLS
  'no-connection',
  'timeout',
  'no-server', // the mail settings were taken out
  'unreadable-password', // sealed with a secret that this server no longer has
  'lost-link', // the same of the link in a mail
  'restored', // it waited when a backup was made that the shop was restored from: it may have left since
  'unknown',
] as const
export type MailFault = (typeof mailFaults)[number]

/** What the transport says of a failure; everything else of it is left alone. */
export type TransportError = {
  readonly code?: string | undefined
  /** Of the server's answer: 550, 451. */
  readonly responseCode?: number | undefined
  /** The command that was answered: 'RCPT TO', 'DATA', 'CONN'. */
  readonly command?: string | undefined
  readonly message?: string | undefined
}

/** OpenSSL's and Node's names for a certificate that does not hold. From memory, checked against a real handshake by test. */
const certificateCodes =
  /^(?:CERT_|DEPTH_ZERO_|SELF_SIGNED_|UNABLE_TO_|ERR_TLS_CERT|ERR_SSL|HOSTNAME_MISMATCH|INVALID_CA|INVALID_PURPOSE)/
const certificateWords = /certificate|altnames/i

/**
 * What went wrong, from the server's answer or from what stopped the connection. Source: RFC 5321 section 4.2.1 (4yz: try
 * again, 5yz: not again) and RFC 4954 section 6 (535: wrong name or password; 454: not now).
 *
 * Example: { responseCode: 550, command: 'RCPT TO' } → 'address-refused'
 */
export function mailFaultOf({ code = '', responseCode = 0, command = '', message = '' }: TransportError): MailFault {
  if (code === 'EAUTH' && !(responseCode >= 400 && responseCode < 500)) return 'wrong-password'
  // A server that does not know STARTTLS says so with a 5yz of its own, which is no word about the mail.
  if (code === 'ETLS' && !certificateWords.test(message)) return 'no-encryption'
  if (responseCode >= 500) return command.startsWith('RCPT') ? 'address-refused' : 'mail-refused'
  if (responseCode >= 400) return 'try-later'
  if (certificateCodes.test(code) || certificateWords.test(message)) return 'certificate'
  if (code === 'ETIMEDOUT') return 'timeout'
  if (/^(?:ECONN|EDNS|ESOCKET|ENOTFOUND|EAI_|EHOSTUNREACH|ENETUNREACH|EPIPE)/.test(code)) return 'no-connection'
  return 'unknown'
}

const final: readonly MailFault[] = ['no-address', 'address-refused', 'mail-refused', 'lost-link', 'restored']

/** Not tried again by itself: the same mail would be refused again. */
export const isFinal = (fault: MailFault): boolean => final.includes(fault)

/** The customer's address has to be put right before another try. */
export const isAddressWrong = (fault: MailFault): boolean => fault === 'no-address' || fault === 'address-refused'
