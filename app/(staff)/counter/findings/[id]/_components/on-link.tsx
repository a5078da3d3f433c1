import { MakeLink } from '@/app/(staff)/jobs/[number]/link/make-link'
import { When } from '@/app/_components/ui/when'
import type { FindingView } from '@/lib/use-cases/findings/see-finding'

/** The customer can answer without a call: what their page says of it, and a link to send. */
export function OnLink({ finding }: { finding: FindingView }) {
  return (
    <section className="stack part" aria-label="On the customer’s link">
      <h2>On the customer’s link</h2>
      <WhatItSays finding={finding} />
      <p>{openWords(finding.openLinks)} A link is shown only once, when you make it: copy it and send it.</p>
      <MakeLink jobId={finding.jobId} address={finding.address} />
    </section>
  )
}

function WhatItSays({ finding }: { finding: FindingView }) {
  if (finding.askedAt === null) {
    return (
      <p>
        Not on the customer’s link yet. Enter the price, then press “Asked, no answer yet”: the link then shows the
        price with tax, and the customer can answer yes or no.
      </p>
    )
  }
  if (finding.price === '') {
    return (
      <p>
        The customer’s link shows no price, so the customer cannot answer there. Enter the price (0 if free) and press
        “Asked, no answer yet”.
      </p>
    )
  }
  return (
    <p>
      The customer can answer yes or no on the link. The link says: <strong>{finding.terms}</strong> Asked{' '}
      <When at={finding.askedAt} zone={finding.timeZone} locale={finding.locale} />
      {finding.how !== '' && `, ${finding.how}`}.
    </p>
  )
}

function openWords(openLinks: number): string {
  if (openLinks === 0) return 'No link to this job is open.'
  return openLinks === 1
    ? 'One link to this job is open; anyone who has it can answer.'
    : `${openLinks} links to this job are open; anyone who has one can answer.`
}
