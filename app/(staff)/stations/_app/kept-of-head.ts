import type { KeptDeed } from '@/app/_components/outbox/kept'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'

/** A head as this tablet's own deeds leave it, whichever of its steps is looked at; these come with the parts that show it. */
export const withKeptOfHead = (screen: StepScreen, deeds: readonly KeptDeed[]): StepScreen =>
  deeds.filter((deed) => ofHead(deed, screen.visitId)).reduce(withDeedOfHead, screen)

const ofHead = ({ kind, input, refusal }: KeptDeed, visitId: string): boolean =>
  refusal === undefined && input.visitId === visitId && (kind === 'correct-reading' || kind === 'rack-place')

/** Where it lies, and a reading that was corrected. */
function withDeedOfHead(screen: StepScreen, { kind, input }: KeptDeed): StepScreen {
  if (kind === 'rack-place') return { ...screen, rackPlace: String(input.rackPlace) }
  const text = input.correction === 'withdraw' ? null : String(input.text)
  return {
    ...screen,
    fields: screen.fields.map((field) => {
      const { repeats } = field
      // The mean of repeats is worked out anew once it is sent.
      if (repeats && repeats.values.length > 1) {
        const values = repeats.values.map((one) => (one.id === input.readingId ? { ...one, text: text ?? '' } : one))
        return { ...field, repeats: { ...repeats, values } }
      }
      return field.readingId === input.readingId ? { ...field, answer: text, notTaken: null } : field
    }),
  }
}
