type Click = Pick<MouseEvent, 'button' | 'metaKey' | 'ctrlKey' | 'shiftKey' | 'altKey' | 'defaultPrevented'>
type Anchor = Pick<HTMLAnchorElement, 'target' | 'getAttribute' | 'hasAttribute'>

/**
 * The address that a click on a link opens in the place of this page; null: the click is the browser's, since it leads to
 * no page of ours, asks for another window, or somebody has taken it. Papers and files stand under `/api/`.
 */
export function followed(click: Click, link: Anchor): string | null {
  const { button, metaKey, ctrlKey, shiftKey, altKey, defaultPrevented } = click
  if (defaultPrevented || button !== 0 || metaKey || ctrlKey || shiftKey || altKey) return null
  if (link.target !== '' || link.hasAttribute('download')) return null
  const href = link.getAttribute('href') ?? ''
  return /^\/(?!\/|api\/)/.test(href) ? href : null
}
