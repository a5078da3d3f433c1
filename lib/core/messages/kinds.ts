/** The texts that a shop prepares for its customers. */
export const messageKinds = ['booked', 'question', 'date-changed', 'ready', 'spec-sheet'] as const
export type MessageKind = (typeof messageKinds)[number]

/** By the shop's mail server, from the person's own mail program, as a text message, or pasted somewhere else. */
export const messageWays = ['mail', 'own-mail', 'sms', 'copy'] as const
export type MessageWay = (typeof messageWays)[number]

/**
 * Where a mail of the shop's own server stands. `called`: given up, the customer was told by phone; `removed`: given up with
 * the customer's personal data.
 */
export const mailStates = ['queued', 'sent', 'failed', 'called', 'removed'] as const
export type MailState = (typeof mailStates)[number]
