import { cc, depth, field, perCent, times, vacuum, type SettingGroup } from './setting-kind'

const fromMemory = 'Common practice, from memory.'

/** How far a reading may lie from what it is held against before it is questioned, and what cannot be true together. */
export const expectedSettingGroups: readonly SettingGroup[] = [
  {
    title: 'When a chamber reading is questioned',
    fields: [
      field('expectAfterCutCc', 'After a cut, off by more than', cc(0.1, 20), 'From before less what the cut takes.'),
      field('expectAfterCutTimesU', 'or by so many uncertainties, the larger', times, fromMemory),
      field('expectChamberCc', 'Beside the other chambers, off by more than', cc(0.1, 20), fromMemory),
      field('expectChamberTimesU', 'or so many uncertainties', times, fromMemory),
      field('expectChamberMostPart', 'but never more than this part of it', perCent(100), fromMemory),
      field('expectNominalPart', 'Against nominal less what is gone', perCent(100), fromMemory),
    ],
  },
  {
    title: 'When a length or a flow is questioned',
    fields: [
      field('expectPlaneIn', 'A corner off the plane of the other three', depth, fromMemory),
      field('expectThickerIn', 'A corner thicker than new less the cuts', depth, fromMemory),
      field('expectThinnerIn', 'A corner thinner than new less the cuts', depth, fromMemory),
      field('expectSeatBeforeIn', 'Seat depth before the cut', depth, 'From the record and the other valves.'),
      field('expectSeatAfterIn', 'Seat depth after the cut', depth, 'From before less what was cut there.'),
      field('expectDepthOverIn', 'Depth at the mill, over the stop', depth, fromMemory),
      field('expectDepthLeastPart', 'Depth at the mill, under this part of the stop', perCent(100), fromMemory),
      field('expectTimesLimit', 'Straightness, over the limit', times, fromMemory),
      field('expectFlowBelowPart', 'Flow under this part of the lift below', perCent(200), fromMemory),
      field('expectFlowRisePart', 'Flow over this part of the lift below, by lift', perCent(300), fromMemory),
      field('expectFlowRiseFromIn', 'but only from a lift of', depth, 'Below it a port opens by leaps.'),
      field('expectFlowLinePart', 'Flow off the line between its neighbours', perCent(100), fromMemory),
      field('expectFlowRunPart', 'Flow off the run before', perCent(100), fromMemory),
    ],
  },
  {
    title: 'Tolerances of seats and springs',
    fields: [
      field('expectTimesTolerance', 'Questioned when off by so many tolerances', times, fromMemory),
      field('guideClearanceToleranceIn', 'Guide clearance', depth, fromMemory),
      field('insertPressToleranceIn', 'Press fit of an insert', depth, fromMemory),
      field('seatWidthToleranceIn', 'Seat width', depth, fromMemory),
      field('recessionToleranceIn', 'Valve recession', depth, fromMemory),
      field('runoutLimitIn', 'Runout of a seat, at most', depth, fromMemory),
      field('vacuumLeastInHg', 'Vacuum held by a seat, at least', vacuum, fromMemory),
      field('stemHeightToleranceIn', 'Stem height', depth, fromMemory),
      field('installedHeightToleranceIn', 'Installed height', depth, fromMemory),
      field('retainerToSealToleranceIn', 'Retainer to seal', depth, fromMemory),
      field('coilBindToleranceIn', 'Height at coil bind', depth, fromMemory),
      field('springPressureTolerancePart', 'Spring pressure', perCent(100), fromMemory),
    ],
  },
  {
    title: 'What cannot be true together',
    fields: [
      field('retainerMarginIn', 'Retainer to seal, left at full lift', depth, 'The spring maker’s figure goes first.'),
      field('coilBindMarginIn', 'Before coil bind, left at full lift', depth, 'The spring maker’s figure goes first.'),
      field('thickerAfterCutIn', 'A corner thicker after a cut than before by', depth, fromMemory),
      field('expectSeatDeeperIn', 'A seat deeper without seat work by', depth, fromMemory),
    ],
  },
]
