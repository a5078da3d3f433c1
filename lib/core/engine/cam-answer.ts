/** Where the cam sits, as it is asked: one question, since valves in the block have their cam there too. */
export const camAnswers = ['unknown', 'yes', 'no', 'side-valve'] as const
export type CamAnswer = (typeof camAnswers)[number]

export const camAnswerOptions: readonly { readonly value: CamAnswer; readonly label: string }[] = [
  { value: 'unknown', label: 'not known' },
  { value: 'yes', label: 'yes' },
  { value: 'no', label: 'no' },
  { value: 'side-valve', label: 'no, valves in the block too' },
]

type CamFacts = { readonly camInHead: boolean | null; readonly valvesInBlock: boolean }

/** What an answer says of cam and valves. */
export const camFacts = (answer: CamAnswer): CamFacts => ({
  camInHead: answer === 'unknown' ? null : answer === 'yes',
  valvesInBlock: answer === 'side-valve',
})

/** The answer that says so. */
export function camAnswerOf({ camInHead, valvesInBlock }: CamFacts): CamAnswer {
  if (valvesInBlock) return 'side-valve'
  return camInHead === null ? 'unknown' : camInHead ? 'yes' : 'no'
}
