'use client'
import { PageError, type PageErrorProps } from '../_components/shell/page-error'

export default function LinkError(props: PageErrorProps) {
  return <PageError {...props} advice="Try again. If it happens twice, call the shop." help="the shop" />
}
