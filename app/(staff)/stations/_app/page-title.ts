import { useEffect } from 'react'

/** The title of the page, where the server does not know what is shown. */
export function usePageTitle(title: string): void {
  useEffect(() => {
    document.title = title === '' ? 'Brasstag' : `${title} · Brasstag`
  }, [title])
}
