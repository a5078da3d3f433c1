import { ButtonLink } from './button-link'

type Props = { page: number; more: boolean; href: (page: number) => string }

/** To the page before and the page after; nothing while there is one page. */
export function Pager({ page, more, href }: Props) {
  if (page === 1 && !more) return null
  return (
    <nav className="row" aria-label="Pages">
      {page > 1 && <ButtonLink href={href(page - 1)}>Previous page</ButtonLink>}
      <span>Page {page}</span>
      {more && <ButtonLink href={href(page + 1)}>Next page</ButtonLink>}
    </nav>
  )
}
