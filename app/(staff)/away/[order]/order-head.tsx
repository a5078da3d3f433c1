import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Notice } from '@/app/_components/ui/notice'
import { Sign } from '@/app/_components/ui/sign'
import { When } from '@/app/_components/ui/when'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import type { OrderHead, OrderPage } from '@/lib/use-cases/outside/see-order'
import type { ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { atWhoseCost } from '../_components/payer'
import { confirmOutsideAction } from '../actions'
import { RejectHead, TakeBackForm } from './head-forms'

type Props = { order: OrderPage; head: OrderHead; manner: ShopLocale }

/** One head of an order: what is cut off it, whether it is back, what of it is confirmed, and what is wrong with it. */
export function OrderHeadLine({ order, head, manner }: Props) {
  const open = head.receivedAt !== null && head.rejected === null && !head.frozen && order.may.receive
  return (
    <li className="stack">
      <div className="row spread">
        <Tag number={head.tag} href={`/heads/${head.headId}`} />
        <span>
          {[
            head.angleIn > 0 ? `angle part ${head.angleIn.toFixed(3)} in` : '',
            head.flatIn > 0 ? `flat part ${head.flatIn.toFixed(3)} in` : '',
          ]
            .filter(Boolean)
            .join(', ')}
        </span>
        <span>
          {head.receivedAt ? (
            <>
              back <When at={head.receivedAt} zone={manner.timeZone} locale={manner.locale} style="date" />
            </>
          ) : (
            'still out'
          )}
        </span>
        {head.marksTyped !== '' && (
          <span>
            marked “{head.marksTyped}”{head.marksRead !== '' && `, read as ${head.marksRead}`}
          </span>
        )}
      </div>
      {head.rejected && <Rejected order={order} head={head} />}
      {head.short !== '' && (
        <Notice kind="caution" title="Short of what was ordered" live={false}>
          <p>
            {head.tag}: {head.short}. This work does not count as done. Reject the head below, or{' '}
            <Link href={`/jobs/${head.jobNumber}/plan/${head.pairId}`}>make a new plan for what was cut</Link>.
          </p>
        </Notice>
      )}
      {head.receivedAt !== null && head.rejected === null && (
        <ul aria-label={`Work on ${head.tag}`}>
          {head.steps.map((step) => (
            <li key={step.id} className="row">
              <span>
                {step.state === 'confirmed' && <Sign kind="done" />} {step.label}:{' '}
                {
                  {
                    confirmed: 'confirmed',
                    'done here': 'done here',
                    open: 'not confirmed',
                  }[step.state]
                }
              </span>
              {open && step.state === 'open' && (
                <ActionButton
                  action={confirmOutsideAction}
                  input={{
                    orderId: order.orderId,
                    visitId: head.visitId,
                    stepId: step.id,
                    confirmed: true,
                    reason: '',
                  }}
                >
                  Confirm {step.label} of {head.tag}
                </ActionButton>
              )}
            </li>
          ))}
        </ul>
      )}
      {open && (
        <>
          {head.steps
            .filter((step) => step.state === 'confirmed')
            .map((step) => (
              <TakeBackForm key={step.id} orderId={order.orderId} visitId={head.visitId} tag={head.tag} step={step} />
            ))}
          <RejectHead orderId={order.orderId} visitId={head.visitId} tag={head.tag} />
        </>
      )}
    </li>
  )
}

function Rejected({ order, head }: { order: OrderPage; head: OrderHead }) {
  const { rejected, redo } = head
  if (!rejected) return null
  return (
    <Notice kind="caution" title={`${head.tag} was rejected`} live={false}>
      <p>
        {rejected.why} Rework {atWhoseCost(rejected.cost)}.
      </p>
      {redo ? (
        <p>
          Rework order: <Link href={`/away/${redo.orderId}`}>{redo.number}</Link>.
        </p>
      ) : (
        !head.frozen &&
        order.may.send && (
          <div className="row">
            <ButtonLink href={`/away/send?head=${head.visitId}&redo=${order.orderId}`}>
              Send {head.tag} out again
            </ButtonLink>
            <span>
              Or do the work here: the steps are on <Link href={`/heads/${head.headId}`}>the route of {head.tag}</Link>{' '}
              again.
            </span>
          </div>
        )
      )}
    </Notice>
  )
}
