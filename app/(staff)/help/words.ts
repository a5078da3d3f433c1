type Lines = readonly (readonly [string, string])[]

export const placeLines: Lines = [
  [
    'Counter',
    'Heads expected, jobs due soon or at risk, findings waiting for an answer, heads to hand over; booking a job',
  ],
  ['Stations', 'The queue of each station, and the step to do on a head'],
  ['Away', 'Heads at vendors and parts on order: since when, what is late; sending and receiving'],
  ['Cut bench', '“Can we reach this cc?”, answered without a job'],
  ['Back room', 'For the owner: waiting and held heads, people, casting records, vendors, limits, audit trail'],
  ['Find', 'At the top of every page: by tag, job, customer, phone number or casting mark'],
]

export const dutyLines: Lines = [
  ['find a head whose tag is lost', 'Search for its stamp, casting marks, an old job or any tag it had before'],
  ['correct a mistyped reading', 'Open the head and correct the reading, with a reason; the old one stays on record'],
  ['undo a tick', 'Open the ticked step and undo it, with a reason; readings stay'],
  [
    'print tag labels',
    'Counter, Tag labels: select or scan heads of any job, print a sheet or single labels. For one job: on the job’s page',
  ],
  [
    'write to a customer',
    'On the job, Messages: choose a text, change it, send it by mail, as a text message or by copying; it stays on record',
  ],
  ['stop a head', 'Hold it and say what is wrong; only the owner can end the hold'],
  ['waive what is missing', 'The owner or a deputy waives it, with a reason; the reason is printed'],
  ['undo a release', 'Not possible. A later correction makes a new revision of the spec sheet'],
]

export const keyLines: Lines = [
  ['/', 'goes to the Find box'],
  ['↑ ↓', 'in the Find box: move through the results'],
  ['Esc', 'closes a dialog; in the Find box: closes the list'],
  ['Enter', 'in a row of figures: next figure; in a form: sends it'],
  ['Tab, Shift + Tab', 'next field or button, and back; the first on each page skips to the content'],
  ['Space', 'ticks a box, chooses an answer, presses a button'],
]

export const wordLines: Lines = [
  ['tag', 'the numbered brass plate on a head'],
  ['job', 'what a customer ordered, for one engine'],
  ['visit', 'a head on one job; the head’s own record is kept across jobs'],
  ['pair', 'the heads of one engine, cut to one plan'],
  ['casting record', 'the figures of one kind of head'],
  ['route', 'the steps this head needs, worked out from the order, the planned cut and the casting'],
  ['ready', 'can be done now: all steps before it are done'],
  ['do again', 'later work made it invalid; the reason is shown'],
  ['waived', 'skipped by the owner or a deputy, with a reason'],
  ['not needed', 'no longer on this head’s route'],
  ['flat cut, angle cut', 'flat: the same depth over the whole deck; angle: full depth at one edge, zero at the other'],
  ['clean-up', 'the smallest cut that makes the deck flat'],
  [
    'deep edge',
    'the edge where an angle cut is deepest; the opposite is the shallow edge, from which positions are measured',
  ],
  ['reading', 'one measured point: the figure as typed, who, when, and the instrument'],
  ['correction', 'a new reading in place of an old one, with a reason'],
  ['finding', 'a problem found that was not ordered; the customer answers yes or no'],
  ['hold', 'work on the head stops until the owner decides'],
  ['outside order', 'work sent to a vendor'],
  ['end 1', 'the marked end of the head: chambers are numbered from it, with the intake face toward you'],
  ['thou', 'a thousandth of an inch'],
]
