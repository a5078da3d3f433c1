import { Notice } from '@/app/_components/ui/notice'

/** Said before anything is typed: without the network this device is of no use. */
export function KeepsNothing() {
  return (
    <Notice kind="caution" title="This browser keeps nothing">
      <p>
        Without the network nothing can be done on this device. Allow this site to store data, or use another browser.
      </p>
    </Notice>
  )
}
