type Lines = readonly (readonly [string, string])[]

export const placeLines: Lines = [
  [
    'Counter',
    'Heads expected in, ready to hand over, promises at risk, findings that wait for an answer; booking a job',
  ],
  ['Stations', 'What waits at each station of the shop, and the one step to do at a head'],
  ['Away', 'What is out at vendors, since when, and what it holds up; sending and receiving'],
  ['Cut bench', '“Can you get it to so many cc?” without a job'],
  [
    'Back room',
    'For the owner: what waits where, what is held, people, casting records, vendors, limits, the audit trail',
  ],
  ['Find', 'In the bar of every page: a tag, a job, a customer, a phone number, a casting mark'],
]

export const dutyLines: Lines = [
  [
    'find a head whose tag is lost',
    'Find it by its stamp, its casting marks or an old job; every tag it ever wore leads to it too',
  ],
  [
    'put a mistyped reading right',
    'Open the head and correct the reading, with the reason; the old one stays on record',
  ],
  ['take a tick back', 'On the ticked line, with a word why; readings stay'],
  [
    'print tag labels',
    'At the counter, Tag labels: heads of any jobs, picked or scanned, on one sheet or one by one; those of one job on its page',
  ],
  ['stop a head', 'Hold it and say what is wrong; the owner’s decision ends the hold'],
  ['let something pass', 'The owner, or a deputy, waives it with a reason; it prints'],
  ['undo a release', 'Not possible; a correction afterwards makes a new revision of the spec sheet'],
]

export const keyLines: Lines = [
  ['/', 'goes to the Find box'],
  ['↑ ↓', 'in the Find box: through what was found'],
  ['Esc', 'closes a dialog; in the Find box: puts the list away'],
  ['Enter', 'in a row of figures: on to the next one; in a form: sends it'],
  ['Tab, Shift + Tab', 'to the next control, and back; the first one on each page skips to the page itself'],
  ['Space', 'ticks a box, chooses an answer, presses a button'],
]

export const wordLines: Lines = [
  ['tag', 'the numbered brass plate on a head; its number is the head’s name'],
  ['job', 'what a customer ordered, for one engine'],
  ['visit', 'a head on one job; the head itself stays on record for ever'],
  ['pair', 'the heads of one engine, cut to one plan'],
  ['casting record', 'what the shop knows of one kind of head'],
  ['route', 'the steps this head needs, from what was ordered, the cut planned and the casting'],
  ['ready', 'everything this step waits for is done'],
  ['do again', 'later work undid it; the reason stands beside it'],
  ['waived', 'the owner let it pass, with a reason'],
  ['not needed', 'no longer on this head’s route'],
  ['flat cut, angle cut', 'metal off the deck evenly; off one edge, to nothing at the other'],
  ['clean-up', 'as little as makes it flat'],
  ['deep edge', 'where an angle cut takes most; the other is the shallow edge, from which places are measured'],
  ['reading', 'one measured point, as typed, with who, when and the instrument'],
  ['correction', 'a new reading that points at the old one and says why'],
  ['finding', 'something seen that was not ordered; the customer says yes or no'],
  ['hold', 'something is wrong: nothing goes on until the owner decides'],
  ['outside order', 'work sent to a vendor'],
  ['end 1', 'the marked end: chambers are counted from it, the intake face toward you'],
  ['thou', 'a thousandth of an inch'],
]
