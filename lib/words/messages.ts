import type { MailFault } from '../core/messages/mail-fault'
import type { MailState, MessageKind, MessageWay } from '../core/messages/kinds'
import type { MessageLack } from '../core/messages/needs'
import type { Placeholder } from '../core/messages/wording'

export type Wording = { readonly subject: string; readonly body: string }

export const messageKindLabels: Readonly<Record<MessageKind, string>> = {
  booked: 'Job booked',
  question: 'Question about a finding',
  'date-changed': 'New date',
  ready: 'Ready for pickup',
  'spec-sheet': 'Spec sheet',
}

const signed = ['{shop}', '{phone}']
const text = (...lines: readonly string[]): string => [...lines, '', ...signed].join('\n')

/** What every shop starts with. The owner can change each. */
export const defaultWording: Readonly<Record<MessageKind, Wording>> = {
  booked: {
    subject: '{shop}: job {job} is booked',
    body: text(
      'Hello {customer},',
      '',
      'We have booked your job {job}: {heads}.',
      'It is due on {promise}.',
      '',
      'You can see where your heads are on this page:',
      '{link}',
    ),
  },
  question: {
    subject: '{shop}: a question about job {job}',
    body: text(
      'Hello {customer},',
      '',
      'While working on job {job} we found: {finding}.',
      'Price to put it right: {price}.',
      '',
      'Please answer yes or no on this page, or call us:',
      '{link}',
    ),
  },
  'date-changed': {
    subject: '{shop}: new date for job {job}',
    body: text(
      'Hello {customer},',
      '',
      'The date for your job {job} has changed. It is now due on {promise}.',
      '',
      'You can see where your heads are on this page:',
      '{link}',
    ),
  },
  ready: {
    subject: '{shop}: job {job} is ready',
    body: text(
      'Hello {customer},',
      '',
      'Your job {job} is ready to pick up: {heads}.',
      'Owed at pickup: {owed}.',
      '',
      'The spec sheet is on this page:',
      '{link}',
    ),
  },
  'spec-sheet': {
    subject: '{shop}: spec sheet for job {job}',
    body: text('Hello {customer},', '', 'The spec sheet for job {job} is on this page, to read or to print:', '{link}'),
  },
}

export const placeholderLabels: Readonly<Record<Placeholder, string>> = {
  customer: 'the customer’s name',
  shop: 'the shop’s name',
  phone: 'the shop’s phone number',
  job: 'the job number',
  heads: 'the tags of the heads',
  promise: 'the promise date',
  link: 'the address of the customer’s page, a new one for each message',
  finding: 'what was found',
  price: 'the price with tax',
  owed: 'what is owed on the job',
}

/** When the shop's mail server sends a text that goes out by itself. */
export const byItselfLabels: Readonly<Record<MessageKind, string>> = {
  booked: 'when a job is booked',
  question: 'when a question with a price is saved',
  'date-changed': 'when the promise date of a job changes',
  ready: 'when the last head of a job is released',
  'spec-sheet': 'when a head is released',
}

export const lackWords: Readonly<Record<MessageLack, string>> = {
  name: 'The customer’s name is not on record any more.',
  promise: 'This job has no promise date. Enter one on the job first.',
  finding: 'No finding of this job is waiting for an answer.',
  price: 'The finding has no price yet. Enter the price and press “Asked, no answer yet”, then write.',
  'ready-head': 'No head of this job is ready to pick up.',
  'spec-sheet': 'No head of this job has a spec sheet yet. Release a head first.',
}

export const wayLabels: Readonly<Record<MessageWay, string>> = {
  mail: 'by mail',
  'own-mail': 'from our own mail program',
  sms: 'by text message',
  copy: 'pasted by hand',
}

export const mailStateLabels: Readonly<Record<MailState, string>> = {
  queued: 'waiting to be sent',
  sent: 'sent',
  failed: 'not sent',
  called: 'called instead',
  removed: 'removed before it was sent',
}

/** What went wrong, and what to do about it. */
export const mailFaultWords: Readonly<Record<MailFault, string>> = {
  'no-address': 'This customer has no mail address. Add one and try again, or call.',
  'address-refused': 'The mail server does not deliver to this address. Check the customer’s mail address.',
  'mail-refused': 'The mail server refused this mail.',
  'try-later': 'The mail server asked us to try again later.',
  'wrong-password': 'The mail server did not accept our name or password. Check the mail settings in the Back room.',
  certificate: 'The mail server could not prove who it is: its certificate is not valid for this name.',
  'no-encryption': 'The mail server offers no encryption. Check the mail settings in the Back room.',
  'no-connection': 'The mail server could not be reached. Check the network, and host and port in the mail settings.',
  timeout: 'The mail server did not answer in time.',
  'no-server': 'No mail server is set. Enter it in the Back room.',
  'unreadable-password': 'The mail password can no longer be read. Enter it again in the mail settings.',
  'lost-link': 'The link in this mail opens nothing any more. Write to the customer again.',
  restored:
    'The shop was restored from a backup in which this mail was waiting. It may have left since. Ask the customer, or look in ' +
    'the mailbox, before you send it again.',
  unknown: 'The mail could not be sent.',
}
