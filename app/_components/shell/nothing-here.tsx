import { ButtonLink } from '../ui/button-link'

export function NothingHere() {
  return (
    <>
      <h1>Page not found</h1>
      <p>The address or the number in it may be mistyped. Type a tag, job or name into the Find box, or start over.</p>
      <div className="row">
        <ButtonLink href="/" variant="main">
          Go to the start
        </ButtonLink>
      </div>
    </>
  )
}
