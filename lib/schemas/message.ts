import { z } from 'zod'
import { messageKinds, messageWays } from '@/lib/core/messages/kinds'
import { isMailAddress } from '@/lib/core/messages/line'
import { checkWording } from '@/lib/core/messages/wording'
import { requiredText, words } from './figure'
import { text } from './text'

const id = text().min(1).max(64)
const optionalId = text().max(64)
const version = z.number().int().nonnegative()

/** What goes into the head of a mail is one line: a line break is refused, never sent. */
const subject = requiredText('Enter a subject.', 200).regex(/^[^\p{Cc}\u2028\u2029]*$/u, 'The subject is one line.')
const body = requiredText('Enter the text.', 5000)

/** The text as it was seen and changed; {link} stands for the customer's page. */
const written = { jobId: id, kind: z.enum(messageKinds), findingId: optionalId, subject, body }

export const sendMessageSchema = z.object(written)
export type SendMessage = z.output<typeof sendMessageSchema>

export const prepareMessageSchema = z.object(written)
export type PrepareMessage = z.output<typeof prepareMessageSchema>

/** Sent by the person's own means: the app cannot know, so the person says so. */
export const logMessageSchema = z.object({
  ...written,
  way: z.enum(messageWays).exclude(['mail']),
  /** The link that was made for it; '': it has none. */
  linkId: optionalId,
})
export type LogMessage = z.output<typeof logMessageSchema>

export const mailDeedSchema = z.object({ messageId: id })
export type MailDeed = z.output<typeof mailDeedSchema>

const wordingFields = { kind: z.enum(messageKinds), subject, body, byItself: z.boolean(), version }

/** Every placeholder must be one that this text can fill. */
export const changeTextSchema = z.object(wordingFields).superRefine((text, context) => {
  for (const field of ['subject', 'body'] as const) {
    const checked = checkWording(text.kind, text[field])
    if (!checked.ok) context.addIssue({ code: 'custom', path: [field], message: checked.refusal.message })
  }
})
export type ChangeTextForm = z.input<typeof changeTextSchema>
export type ChangeText = z.output<typeof changeTextSchema>

export const mailSecurities = ['tls', 'starttls', 'none'] as const

const address = (message: string) => text().trim().refine(isMailAddress, message)
const wrongAddress = 'Enter one mail address, such as shop@example.com.'

export const changeMailServerSchema = z.object({
  host: words(200).regex(/^[^\s\p{Cc}/@]*$/u, 'Enter the name of the server only, such as mail.example.com.'),
  port: text()
    .trim()
    .regex(/^\d{1,5}$/, 'Enter the port, such as 587.')
    .transform(Number)
    .refine((port) => port >= 1 && port <= 65535, 'A port is from 1 to 65535.'),
  security: z.enum(mailSecurities),
  user: words(200),
  /** '': as it is. Never trimmed: a space may be part of it. */
  password: text().max(200),
  fromAddress: z.union([z.literal(''), address(wrongAddress)]),
  replyTo: z.union([z.literal(''), address(wrongAddress)]),
  version,
})
export type ChangeMailServerForm = z.input<typeof changeMailServerSchema>
export type ChangeMailServer = z.output<typeof changeMailServerSchema>

export const testMailSchema = z.object({ to: address(wrongAddress) })
export type TestMail = z.output<typeof testMailSchema>
