import type { Metadata } from 'next'
import { ButtonLink } from '../_components/ui/button-link'

export const metadata: Metadata = { title: 'Not allowed' }

export default function Forbidden() {
  return (
    <>
      <h1>You are not allowed to see this page</h1>
      <p>If you need it for your work, ask the owner to change your rights.</p>
      <div className="row">
        <ButtonLink href="/" variant="main">
          Go to the start
        </ButtonLink>
      </div>
    </>
  )
}
