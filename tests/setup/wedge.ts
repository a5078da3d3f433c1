/**
 * The figures of an invented wedge head. Opening area 10.1706 in² is 6.0 thou per cc, its centre at 0.635 of the milled
 * width (3.810 of 6.000) makes 20 thou flat and 63 thou at the deep edge take 10 cc [both common practice].
 */
export const wedgeFigures = {
  'as-cast': { nominalCc: '64.0', openingAreaIn2: '10.1706', openingCentreIn: '3.810' },
  any: {
    milledWidthIn: '6.000',
    deckLengthIn: '20.00',
    // The tests' corners are read right at the edges.
    cornerInsetEdgeIn: '0',
    cornerInsetEndIn: '0',
    thicknessNewIn: '4.250',
    thicknessLeastIn: '4.130',
    largestAngleDeg: '1.0',
    intakeValveIn: '2.055',
    exhaustValveIn: '1.600',
    intakeValveAngleDeg: '22.0',
    exhaustValveAngleDeg: '22.0',
    intakeValveXIn: '3.05',
    exhaustValveXIn: '3.30',
    intakeValveZIn: '0.520',
    exhaustValveZIn: '0.470',
    intakeFaceDeg: '10.0',
    faceHeightIn: '2.60',
    portXIn: '0.20',
    portZIn: '2.10',
    dowelXIn: '0.75',
    dowelDepthIn: '0.375',
    boltHoleIn: '0.470',
    boltIn: '0.4375',
    boltHoleLengthIn: '3.750',
    spotFaceIn: '0.875',
    threadLeftIn: '0.250',
  },
} as const

/**
 * One for each browser test that cuts: none of them has been cut, so its rate is the record's own, whatever other tests
 * have taught of others.
 */
export const uncutWedges = ['Lorne wedge', 'Cawdrey wedge', 'Orrell wedge', 'Kestle 64', 'Tarrow 70'] as const
export type UncutWedge = (typeof uncutWedges)[number]
