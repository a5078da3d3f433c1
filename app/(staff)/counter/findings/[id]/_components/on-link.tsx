import { MakeLink } from '@/app/(staff)/jobs/[number]/link/make-link'
import { When } from '@/app/_components/ui/when'
import type { FindingView } from '@/lib/use-cases/findings/see-finding'

/** The customer can answer without a call: what their page says of it, and a link to send. */
export function OnLink({ finding }: { finding: FindingView }) {
  return (
    <section className="stack part" aria-label="On the customer’s link">
      <h2>On the customer’s link</h2>
      <WhatItSays finding={finding} />
      <p>{openWords(finding.openLinks)} A link is shown only when it is made: copy it then and send it.</p>
      <MakeLink jobId={finding.jobId} address={finding.address} />
    </section>
  )
}

function WhatItSays({ finding }: { finding: FindingView }) {
  if (finding.askedAt === null) {
    return (
      <p>
        Not on the customer’s link yet. Write the price, then press “Asked, no answer yet”: it stands on the link with
        the price, tax and all, and the customer can answer yes or no there.
      </p>
    )
  }
  if (finding.price === '') {
    return (
      <p>
        It stands on the customer’s link without a price, so it cannot be answered there. Write the price (0 when it
        costs nothing) and press “Asked, no answer yet”.
      </p>
    )
  }
  return (
    <p>
      The customer can answer yes or no on the link. It says: <strong>{finding.terms}</strong> Asked{' '}
      <When at={finding.askedAt} zone={finding.timeZone} locale={finding.locale} />
      {finding.how !== '' && `, ${finding.how}`}.
    </p>
  )
}

function openWords(openLinks: number): string {
  if (openLinks === 0) return 'No link to this job is open.'
  return openLinks === 1
    ? 'One link to this job is open; whoever has it can answer.'
    : `${openLinks} links to this job are open; whoever has one can answer.`
}
