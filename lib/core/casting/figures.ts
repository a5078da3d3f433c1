/**
 * What may be known of a casting, in the core's units; every one optional. `form`: whether the figure depends on the
 * chamber form (as cast, machined, opened). Frame of x, y, z: shop-wide section frame (README of this folder's parent):
 * x across from the shallow edge, y along from end 1, z up into the head from the deck.
 */
export const castingFigures = {
  // chamber
  nominalCc: { label: 'nominal chamber', quantity: 'chamberVolume', perForm: true },
  openingAreaIn2: { label: 'opening area', quantity: 'area', perForm: true },
  openingCentreIn: {
    label: 'centre of the opening from the shallow edge',
    quantity: 'openingCentre',
    perForm: true,
  },
  thouPerCc: { label: 'rate, thou per cc', quantity: 'thouPerCc', perForm: true },
  perimeterIn: { label: 'chamber perimeter', quantity: 'perimeter', perForm: true },
  wallDraftDeg: { label: 'wall draft', quantity: 'wallDraft', perForm: true },
  // deck
  milledWidthIn: { label: 'milled width', quantity: 'milledWidth', perForm: false },
  deckLengthIn: { label: 'deck length', quantity: 'deckLength', perForm: false },
  cornerInsetEdgeIn: { label: 'corners touched, inside the edges', quantity: 'cornerInset', perForm: false },
  cornerInsetEndIn: { label: 'corners touched, inside the ends', quantity: 'cornerInset', perForm: false },
  thicknessNewIn: { label: 'new head thickness', quantity: 'thickness', perForm: false },
  thicknessLeastIn: { label: 'minimum thickness the shop allows', quantity: 'thickness', perForm: false },
  landNewIn: { label: 'land under the intake port, new', quantity: 'land', perForm: false },
  landLeastIn: { label: 'minimum land under the intake port', quantity: 'land', perForm: false },
  landXIn: { label: 'land under the intake port from the shallow edge', quantity: 'acrossDeck', perForm: false },
  largestAngleDeg: { label: 'largest angle', quantity: 'angle', perForm: false },
  // valves
  intakeValves: { label: 'intake valves a chamber', quantity: 'valvesPerChamber', perForm: false },
  exhaustValves: { label: 'exhaust valves a chamber', quantity: 'valvesPerChamber', perForm: false },
  intakeValveIn: { label: 'intake valve', quantity: 'valveDiameter', perForm: false },
  exhaustValveIn: { label: 'exhaust valve', quantity: 'valveDiameter', perForm: false },
  intakeValveAngleDeg: { label: 'intake valve angle', quantity: 'valveAngle', perForm: false },
  exhaustValveAngleDeg: { label: 'exhaust valve angle', quantity: 'valveAngle', perForm: false },
  intakeValveXIn: { label: 'intake valve from the shallow edge', quantity: 'length', perForm: false },
  exhaustValveXIn: { label: 'exhaust valve from the shallow edge', quantity: 'length', perForm: false },
  intakeValveZIn: { label: 'intake valve above the deck', quantity: 'length', perForm: false },
  exhaustValveZIn: { label: 'exhaust valve above the deck', quantity: 'length', perForm: false },
  // a second angle of canted valves, seen from the side
  intakeValveCantDeg: { label: 'intake valve, second angle', quantity: 'valveAngle', perForm: false },
  exhaustValveCantDeg: { label: 'exhaust valve, second angle', quantity: 'valveAngle', perForm: false },
  // seats: three circles on the valve's axis, offsets from the sealing circle, positive the way the valve opens
  intakeSealingIn: { label: 'intake sealing circle', quantity: 'seatCircle', perForm: false },
  intakeTopCutIn: { label: 'intake top-cut circle', quantity: 'seatCircle', perForm: false },
  intakeTopCutOffsetIn: {
    label: 'intake top cut from the sealing circle',
    quantity: 'seatOffset',
    perForm: false,
  },
  intakeInsertIn: { label: 'intake insert', quantity: 'seatCircle', perForm: false },
  intakeInsertOffsetIn: {
    label: 'intake insert from the sealing circle',
    quantity: 'seatOffset',
    perForm: false,
  },
  intakeSeatDepthIn: {
    label: 'deck to the intake top-cut circle, nearest point',
    quantity: 'seatDepth',
    perForm: false,
  },
  exhaustSealingIn: { label: 'exhaust sealing circle', quantity: 'seatCircle', perForm: false },
  exhaustTopCutIn: { label: 'exhaust top-cut circle', quantity: 'seatCircle', perForm: false },
  exhaustTopCutOffsetIn: {
    label: 'exhaust top cut from the sealing circle',
    quantity: 'seatOffset',
    perForm: false,
  },
  exhaustInsertIn: { label: 'exhaust insert', quantity: 'seatCircle', perForm: false },
  exhaustInsertOffsetIn: {
    label: 'exhaust insert from the sealing circle',
    quantity: 'seatOffset',
    perForm: false,
  },
  exhaustSeatDepthIn: {
    label: 'deck to the exhaust top-cut circle, nearest point',
    quantity: 'seatDepth',
    perForm: false,
  },
  // a flat-deck head: the engine maker's limits, never the shop's
  intakeRecessionLeastIn: { label: 'minimum intake valve recession', quantity: 'recession', perForm: false },
  intakeRecessionMostIn: { label: 'maximum intake valve recession', quantity: 'recession', perForm: false },
  exhaustRecessionLeastIn: { label: 'minimum exhaust valve recession', quantity: 'recession', perForm: false },
  exhaustRecessionMostIn: { label: 'maximum exhaust valve recession', quantity: 'recession', perForm: false },
  injectorProtrusionLeastIn: { label: 'minimum injector protrusion', quantity: 'protrusion', perForm: false },
  injectorProtrusionMostIn: { label: 'maximum injector protrusion', quantity: 'protrusion', perForm: false },
  injectorXIn: { label: 'injector from the shallow edge', quantity: 'acrossDeck', perForm: false },
  // intake face, dowels, bolts
  intakeFaceDeg: { label: 'intake face angle', quantity: 'valveAngle', perForm: false },
  faceHeightIn: { label: 'intake face height', quantity: 'faceHeight', perForm: false },
  portXIn: { label: 'port centre from the shallow edge', quantity: 'length', perForm: false },
  portZIn: { label: 'port centre above the deck', quantity: 'length', perForm: false },
  dowelXIn: { label: 'dowels from the shallow edge', quantity: 'length', perForm: false },
  dowelDepthIn: { label: 'dowel hole depth', quantity: 'holeDepth', perForm: false },
  boltCount: { label: 'bolts', quantity: 'count', perForm: false },
  boltHoleIn: { label: 'bolt hole', quantity: 'boltDiameter', perForm: false },
  boltIn: { label: 'bolt', quantity: 'boltDiameter', perForm: false },
  boltHoleLengthIn: { label: 'bolt hole length', quantity: 'boltHoleLength', perForm: false },
  spotFaceIn: { label: 'spot face', quantity: 'spotFace', perForm: false },
  threadLeftIn: { label: 'thread left in a blind hole', quantity: 'holeDepth', perForm: false },
  rockerXIn: { label: 'rocker stand from the shallow edge', quantity: 'length', perForm: false },
  rockerZIn: { label: 'rocker stand above the deck', quantity: 'length', perForm: false },
  camXIn: { label: 'cam from the shallow edge', quantity: 'length', perForm: false },
  camZIn: { label: 'cam above the deck', quantity: 'length', perForm: false },
} as const

export type CastingFigureKey = keyof typeof castingFigures
export const castingFigureKeys = Object.keys(castingFigures) as CastingFigureKey[]
export type CastingFacts = Readonly<Partial<Record<CastingFigureKey, number>>>

export const chamberForms = ['as-cast', 'machined', 'opened'] as const
export type ChamberForm = (typeof chamberForms)[number]
