import type { ReadingShape } from './shape'

type Choice = NonNullable<ReadingShape['choices']>[number]
type More = Pick<ReadingShape, 'hint' | 'mayBeWords'>

const words = { mayBeWords: true } as const

const figure = (
  label: string,
  quantity: NonNullable<ReadingShape['quantity']>,
  points: ReadingShape['points'],
  more: More = {},
): ReadingShape => ({ label, form: 'figure', quantity, points, ...more })

const choice = (label: string, choices: readonly Choice[], more: More = {}): ReadingShape => ({
  label,
  form: 'choice',
  points: 'one',
  choices,
  ...more,
})

const note = (label: string, hint: string): ReadingShape => ({
  label,
  form: 'note',
  points: 'one',
  hint,
})

const may = (value: string, label: string): Choice => ({ value, label })
const bad = (value: string, label: string): Choice => ({ value, label, bad: true })

/**
 * Every kind of answer, and what it looks like. The value of a choice is what is stored as the reading's text. A kind is
 * there by its row: rows that are kept name it, so none is ever taken out.
 */
const specs = {
  condition: choice(
    'Condition',
    [
      may('sound', 'No damage seen'),
      may('worn', 'Worn or marked'),
      may('damaged', 'Damage seen: report it as a finding'),
    ],
    { hint: 'As it came through the door.', ...words },
  ),
  'came-with': note(
    'What came with it',
    'Valves, springs, bolts, plugs, boxes, and whose they are. “Nothing” if bare.',
  ),
  photo: note('Photo', '“Taken”, or “no photo” and why.'),

  crack: choice('Crack check', [may('none', 'No crack found'), bad('crack', 'Crack found')]),
  pressure: choice('Pressure check', [may('holds', 'Holds pressure'), bad('leaks', 'Leaks')]),
  'pressure-held': figure('Air pressure held', 'airPressure', 'one'),
  'pressure-heat': figure('Water temperature', 'waterTemperature', 'one'),
  'pressure-minutes': figure('Held for', 'minutes', 'one'),
  thickness: figure('Thickness', 'thickness', 'corners', {
    hint: 'Deck to the face above it, at each corner.',
  }),
  straightness: figure('Straightness', 'depth', 'across-along', {
    hint: 'Largest gap under the straight edge. 0 if the thinnest gauge does not go in.',
  }),
  'removed-before': figure('Removed before this job', 'removed', 'one', {
    hint: 'New thickness minus what you measure. “New thickness unknown” if nobody knows.',
    ...words,
  }),
  cc: figure('Chamber volume', 'chamberVolume', 'chambers', { hint: 'Counted from the marked end.' }),
  'valves-used': choice(
    'Valves in while measuring',
    [
      may('own', 'This head’s own valves'),
      may('new', 'The new valves for it'),
      may('shop', 'The shop’s checking valves'),
    ],
    words,
  ),
  'plug-used': choice(
    'Plug in while measuring',
    [may('own', 'The engine’s own plug'), may('shop', 'The shop’s checking plug'), may('flush', 'A flush plug')],
    words,
  ),
  'seat-depth': figure('Seat to deck', 'seatDepth', 'chamber-valves', {
    hint: 'Depth from the deck to the named circle, where it is nearest to the deck.',
  }),
  recession: figure('Valve below the deck', 'recession', 'chamber-valves', {
    hint: 'Deck to the valve head, valve shut. Minus where the valve stands proud of the deck.',
  }),
  protrusion: figure('Injector protrusion', 'protrusion', 'chambers', {
    hint: 'Deck to the injector’s tip. Minus where the tip lies behind the deck.',
  }),
  'deck-cc': figure('Volume in the deck', 'flatDeckVolume', 'chambers', {
    hint: 'By burette under a plate; only if it was read. 0 where nothing runs in.',
  }),

  flow: figure('Flow', 'flow', 'flow', { hint: 'If a lift cannot be flowed, say why.', ...words }),

  'cut-depth': figure('Total depth from touch-off', 'cutDepth', 'one', {
    hint: 'All passes together, from the first touch-off.',
  }),
  'touch-off': choice('Touch-off', [
    may('same', 'The first one counts'),
    may('new', 'Touched off anew: count from here'),
  ]),
  'edge-depth': figure('Depth at both edges', 'cutDepth', 'edges', { hint: '0 where the cut runs out.' }),
  'face-depth': figure('Cut off the intake face', 'cutDepth', 'ends', { hint: 'Only if the face was cut.' }),
  'intake-choice': choice('Work at the intake side', [
    may('leave', 'Leave it'),
    may('port-match', 'Port match'),
    may('cut-face', 'Cut the head’s face'),
    may('mill-manifold', 'Mill the manifold'),
    may('tell-customer', 'Tell the customer'),
  ]),
  'break-through': choice('Did the cutter break through?', [
    may('none', 'No'),
    may('broken', 'Yes, or not sure: pressure check again'),
  ]),

  count: choice('Count', [
    may('all', 'Everything is here'),
    may('short', 'Something is still there: report it'),
    bad('wrong', 'Wrong head or wrong part'),
  ]),
  damage: choice('Damage', [may('none', 'No damage'), bad('damaged', 'Damaged')]),
  'vendor-marks': note('Marks the vendor put on it', 'Exactly as they stand on the head. “None” if there are none.'),

  'bolt-squared': choice('Bolt seats square to the new deck', [
    may('all', 'Every hole is square'),
    bad('cannot', 'A hole cannot be squared'),
  ]),
  'bolt-passes': choice('Bolts pass', [
    may('all', 'Every bolt passes'),
    bad('stuck', 'A bolt does not pass, slotted or not'),
  ]),
  'bolt-slotted': note('Slotted holes', 'Which holes, counted from the marked end. “None” if none.'),
  'bolt-reach': choice('Bolt reach', [
    may('good', 'Long enough, none bottoms'),
    bad('short', 'Too little thread'),
    bad('bottoms', 'Bottoms in the hole'),
  ]),
  dowels: choice('Dowels', [may('home', 'Seat fully'), bad('proud', 'Dowels bottom, head sits proud')]),

  'top-cut': choice('Top cut', [
    may('full', 'All the way round'),
    may('narrow', 'Narrower, complete all round'),
    may('gone', 'Cut away somewhere: seat work'),
  ]),
  'insert-marks': choice('Cutter marks on the inserts', [
    may('none', 'None'),
    may('outside', 'On the insert, outside the seat'),
    bad('seat', 'Into the seat'),
  ]),
  'leak-test': choice('Leak test', [may('tight', 'Tight'), may('leaks', 'Leaks')]),
  'guide-clearance': figure('Guide clearance', 'guideClearance', 'each-valve', {
    hint: 'Guide bore less stem, at the tightest place.',
  }),
  'insert-press': figure('Insert press', 'insertPress', 'each-valve', {
    hint: 'Insert less its bore. Leave empty where no insert was fitted.',
  }),
  'seat-angles': {
    ...note('Seat angles', 'All cuts, from the chamber to the port: “30 45 60”.'),
    points: 'each-valve',
  },
  'seat-width': figure('Seat width', 'depth', 'each-valve'),
  runout: figure('Runout of the seat', 'depth', 'each-valve'),
  vacuum: figure('Vacuum held', 'vacuum', 'each-valve', { hint: 'Port closed, valve on its seat.' }),
  sink: figure('Valve recession', 'smallDepth', 'each-valve', {
    hint: 'Deeper than it sat before. 0 if it did not move.',
  }),
  'stem-height': figure('Stem height', 'height', 'each-valve', { hint: 'Height of the tip above the spring seat.' }),
  'seat-edge': choice('Edge left to the chamber', [may('none', 'No edge'), may('edge', 'There is an edge: blend it')]),

  'installed-height': figure('Installed height of the spring', 'height', 'each-valve', { hint: 'With the shims in.' }),
  shims: figure('Shims under the spring', 'shimStack', 'each-valve', { hint: 'All together. 0 if there are none.' }),
  'retainer-to-seal': figure('Retainer to seal, valve shut', 'clearance', 'each-valve'),
  'coil-bind': figure('Spring height at coil bind', 'height', 'each-valve'),
  'seat-pressure': figure('Seat pressure', 'springForce', 'each-valve', {
    hint: 'At the installed height, with the shims in.',
  }),
  'open-pressure': figure('Open pressure', 'springForce', 'each-valve', { hint: 'At full lift, with the shims in.' }),
  'spring-pressure': figure('Spring pressure', 'springForce', 'seat-open'),
  'spring-rate': figure('Spring rate', 'springRate', 'valves', {
    hint: 'The maker’s figure. Leave empty to work it out from seat and open pressure.',
  }),
  'geometry-note': choice(
    'Rocker and pushrod',
    [
      may('told', 'Customer told: check length and geometry'),
      may('good', 'Measured, good as it is'),
      may('change', 'Measured, other pushrods needed: customer told'),
    ],
    words,
  ),
  'cam-note': choice(
    'Cam timing and cam bore',
    [
      may('told', 'Customer told: timing retards, check it'),
      may('good', 'Measured, good as it is'),
      bad('binds', 'Cam binds in its bore'),
    ],
    words,
  ),
  'trial-fit': choice('Manifold, headers, covers', [
    may('tried', 'Tried, all go on'),
    may('told', 'Not tried: customer told'),
    bad('no', 'Something does not go on'),
  ]),

  'finish-how': choice('How the finish was judged', [
    may('measured', 'Measured'),
    may('comparator', 'By comparator'),
    may('not-measured', 'Not measured'),
  ]),
  finish: figure('Surface finish', 'finish', 'one', {
    hint: 'Leave empty if it was not measured.',
    ...words,
  }),
  'cutter-marks': choice('Cutter marks by the inserts', [
    may('none', 'None'),
    may('outside', 'Outside the sealing area'),
    bad('reaching', 'Reaching the sealing area'),
  ]),
  ptv: choice('Piston to valve', [
    may('told', 'To be checked at assembly: customer told'),
    may('measured', 'Measured on the engine'),
    bad('short', 'Measured, too little'),
  ]),
  'ptv-clearance': figure('Clearance measured', 'clearance', 'valves', {
    hint: 'Only if it was measured on the engine.',
  }),
  inspection: choice('Final inspection', [may('pass', 'Passes'), bad('no', 'Does not pass')]),

  'taken-by': note('Who took which heads', 'Name, and the tags.'),
  side: choice(
    'Bank or side',
    [
      may('left', 'Left bank'),
      may('right', 'Right bank'),
      may('either', 'Fits either side'),
      may('only', 'The only head'),
    ],
    words,
  ),
  'parts-returned': note('Parts and cores returned', 'What went back with it, and what stays here. “Nothing” if none.'),

  'work-note': note('What was done', 'In a few words, if there is something to say.'),
  verdict: choice('How it came out', [may('good', 'As it should be'), bad('not-good', 'Not as it should be')]),
} satisfies Readonly<Record<string, ReadingShape>>

export type ReadingKind = keyof typeof specs
export const readingKinds = Object.keys(specs) as readonly ReadingKind[]

export type ReadingSpec = ReadingShape & { readonly kind: ReadingKind }

/** The one description that the station screen, the job sheet and the completeness check are drawn from. */
export const readingSpecs = Object.fromEntries(
  Object.entries(specs).map(([kind, spec]) => [kind, { kind: kind as ReadingKind, ...spec }]),
) as Readonly<Record<ReadingKind, ReadingSpec>>
