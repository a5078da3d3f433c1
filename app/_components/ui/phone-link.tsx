/** A telephone number as it was typed. `dial`: the address that dials it; null: there is none. */
export function PhoneLink({ number, dial }: { number: string; dial: string | null }) {
  if (number === '') return <span className="soft">no phone number</span>
  if (dial === null) return <span>{number}</span>
  return (
    <a href={dial} className="nowrap">
      {number}
    </a>
  )
}
