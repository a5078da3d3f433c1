import type { Answers } from './person'

/** What the browser tests answer where the answer is not the point. */

export const checkIn: Answers = {
  choices: { Condition: 'No damage seen' },
  words: { 'What came with it': 'Bare', 'No photo: why': 'the camera is away' },
}

export const corners = (figure: string) => ({
  'intake end 1': figure,
  'exhaust end 1': figure,
  'intake end 2': figure,
  'exhaust end 2': figure,
})
