import { dossierOf, type Dossier } from './dossier'

type Event = Dossier['visit']['events'][number]

/** The dossier with one more event of its visit, and with the chamber form that it may have changed: nothing is read. */
export function withEvent(
  { visit, settings, today, otherRepeats, earlier }: Dossier,
  event: Event,
  form = visit.head.chamberForm,
): Dossier {
  const head = { ...visit.head, chamberForm: form }
  return dossierOf({ ...visit, head, events: [...visit.events, event] }, settings, today, { otherRepeats, earlier })
}
