'use client'
import { PageError, type PageErrorProps } from '../_components/shell/page-error'
import { ButtonLink } from '../_components/ui/button-link'

export default function StaffError(props: PageErrorProps) {
  return (
    <PageError {...props} advice="Everything saved before is safe. Try again. If it happens twice, tell the owner.">
      <ButtonLink href="/">Go to the start</ButtonLink>
    </PageError>
  )
}
