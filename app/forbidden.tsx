import { PublicShell } from './_components/shell/public-shell'
import { ButtonLink } from './_components/ui/button-link'

export default function Forbidden() {
  return (
    <PublicShell narrow>
      <h1>This page is not for you</h1>
      <p>Your name does not carry the right to see it. If it should, ask the owner.</p>
      <ButtonLink href="/" variant="main">
        Go to the start
      </ButtonLink>
    </PublicShell>
  )
}
