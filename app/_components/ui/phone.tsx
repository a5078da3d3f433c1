/** A telephone number that dials where the device can. */
export function Phone({ number }: { number: string }) {
  if (number === '') return <span className="soft">no phone number</span>
  return (
    <a href={`tel:${number.replace(/[^\d+]/g, '')}`} className="nowrap">
      {number}
    </a>
  )
}
