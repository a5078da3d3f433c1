import type { z } from 'zod'
import type { sendMessageSchema } from '@/lib/schemas/message'
import type { PreparedMessage } from '@/lib/use-cases/messages/prepare-message'
import type { MessagesView } from '@/lib/use-cases/messages/see-messages'

/** What the parts that write to a customer need of a job. */
export type WritingView = Pick<
  MessagesView,
  'jobId' | 'customerId' | 'customer' | 'hasMail' | 'hasServer' | 'localHost' | 'texts'
>
export type WritingProps = { view: WritingView; findingId: string; onDone: () => void }

export type Written = z.input<typeof sendMessageSchema>
export type Prepared = { readonly written: Written; readonly text: PreparedMessage }
