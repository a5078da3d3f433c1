/**
 * A day of the calendar ("2026-03-14") with the words that the server has made for it: a browser's first words for a day
 * take it 30 ms, so what a script draws as the page comes up brings its own.
 */
export function SaidDay({ on, said }: { on: string; said: string }) {
  return (
    <time dateTime={on} className="nowrap">
      {said}
    </time>
  )
}
