import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { hasLink, withLink } from '@/lib/core/messages/wording'
import { linkPath, makeLink, type MadeLink } from '@/lib/data/links'
import { shopAddress } from '@/lib/data/shop-address'
import { write, type Moment } from '@/lib/data/write'
import type { PrepareMessage } from '@/lib/schemas/message'
import { refuseLacks } from './refuse-lacks'

export type PreparedMessage = {
  readonly subject: string
  readonly body: string
  /** The link that was made for it; '': it has none. */
  readonly linkId: string
}

/**
 * The text with a real link in it, for a person to send by their own means. The address of the link is given this once:
 * neither the operation's answer nor anything else that is kept holds it.
 */
export async function prepareMessage(actor: Actor, input: PrepareMessage, moment: Moment): Promise<PreparedMessage> {
  must(allow(actor, 'message.write'))
  const { subject, body } = input
  let made: MadeLink | undefined
  const { linkId } = await write(actor, moment, async (ctx) => {
    const job = await refuseLacks(ctx.tx, input)
    made = hasLink(body) || hasLink(subject) ? await makeLink(ctx, job.id) : undefined
    return { linkId: made?.linkId ?? '' }
  })
  if (linkId === '') return { subject, body, linkId }
  if (!made) {
    throw new RefusedError({ code: 'wrong-state', message: 'This text was already made. Make it again.' })
  }
  const address = `${shopAddress()}${linkPath(made.token)}`
  return { subject: withLink(subject, address), body: withLink(body, address), linkId }
}
