/** The machines and fixed pieces of a shop that a build can be held against. */
export const machineTypes = [
  'lathe',
  'drill press',
  'milling machine',
  'shaper',
  'planer',
  'grinder',
  'bandsaw',
  'surface plate',
  'vise',
  'furnace',
  'crucible',
  'flask',
  'hot-wire bow',
] as const;
export type MachineType = (typeof machineTypes)[number];

/** What a figure measures: read and shown in its unit. Bare numbers: rpm, kW, litres, kW, a plain count. */
export type FigureMeasure = 'length' | 'mass' | 'temperature' | 'rpm' | 'power' | 'volume' | 'rate' | 'count' | 'speed';

/** One thing to know of a machine. */
export interface MachineFigure {
  /** Kept in build files for life. */
  readonly key: string;
  readonly label: string;
  readonly measures: FigureMeasure;
  /** Where to put the rule, one sentence. */
  readonly help: string;
  /** May be zero. */
  readonly zero?: boolean;
}

const length = (key: string, label: string, help: string): MachineFigure => ({ key, label, measures: 'length', help });
const reach = (key: string, label: string, help: string): MachineFigure => ({
  ...length(key, label, help),
  zero: true,
});
const other = (key: string, measures: FigureMeasure, label: string, help: string): MachineFigure => ({
  key,
  label,
  measures,
  help,
});

const power = other('power', 'power', 'Motor power', 'From the motor’s plate; what reaches the spindle is less.');
const slowest = other('slowestRpm', 'rpm', 'Slowest speed', 'Turns per minute of the slowest step.');
const fastest = other('fastestRpm', 'rpm', 'Fastest speed', 'Turns per minute of the fastest step.');
const table = [
  length('tableLength', 'Table length', 'Of the flat of the table.'),
  length('tableWidth', 'Table width', 'Of the flat of the table.'),
];
const travels = [
  length('travelX', 'Long travel', 'From stop to stop.'),
  length('travelY', 'Cross travel', 'From stop to stop.'),
  length('travelZ', 'Upright travel', 'From stop to stop.'),
];

/** What there is to know of each type, in the order of the form. A figure that is not known is left out of the machine. */
export const machineFigures: Readonly<Record<MachineType, readonly MachineFigure[]>> = {
  lathe: [
    length('swingOverBed', 'Swing over bed', 'Largest diameter that turns over the bed: twice the height of centres.'),
    length('swingOverSaddle', 'Swing over saddle wings', 'Largest diameter that turns over the wings of the saddle.'),
    length('swingOverCrossSlide', 'Swing over cross slide', 'Largest diameter that turns over the cross slide.'),
    length('swingInGap', 'Swing in gap', 'Largest diameter that turns in the gap; leave out without a gap.'),
    length('gapLength', 'Gap length', 'From the face of the spindle’s nose to where the bed begins again.'),
    length('betweenCentres', 'Between centres', 'Longest work with the tailstock at the end of the bed, barrel in.'),
    reach('tailOverhang', 'Barrel out at that length', 'How far the barrel stands out for the length above.'),
    length('barrelTravel', 'Tailstock barrel travel', 'From in to out.'),
    length('barrelDiameter', 'Tailstock barrel diameter', 'The tool block must pass it near the end of the work.'),
    length('tailCentreLength', 'Length of tailstock centre', 'How far its point stands before the barrel.'),
    length('headCentreLength', 'Length of headstock centre', 'How far its point stands before the face of the nose.'),
    length('spindleBore', 'Spindle bore', 'What passes through the spindle.'),
    length('facePlateDiameter', 'Face plate diameter', 'Of the largest plate there is.'),
    reach('facePlateFace', 'Face of plate before nose', 'How far its face stands before the face of the nose.'),
    length('threeJawDiameter', 'Three-jaw chuck diameter', 'Of its body.'),
    length('threeJawLength', 'Three-jaw chuck length', 'From the face of the nose to the ends of the jaws.'),
    length('threeJawDepth', 'Three-jaw grip', 'Length of the jaws that closes on the work.'),
    length('threeJawLeast', 'Three-jaw smallest grip', 'Smallest diameter that the jaws close on from without.'),
    length(
      'threeJawMost',
      'Three-jaw largest grip',
      'Largest diameter gripped from without, jaws reversed if they can be.',
    ),
    length('threeJawInsideLeast', 'Three-jaw smallest bore', 'Smallest bore that the jaws open in.'),
    length('threeJawInsideMost', 'Three-jaw largest bore', 'Largest bore that the jaws open in.'),
    length('fourJawDiameter', 'Four-jaw chuck diameter', 'Of its body.'),
    length('fourJawLength', 'Four-jaw chuck length', 'From the face of the nose to the ends of the jaws.'),
    length('fourJawDepth', 'Four-jaw grip', 'Length of the jaws that closes on the work.'),
    length('fourJawLeast', 'Four-jaw smallest grip', 'Smallest diameter that the jaws close on from without.'),
    length(
      'fourJawMost',
      'Four-jaw largest grip',
      'Largest diameter gripped from without, jaws reversed if they can be.',
    ),
    length('fourJawInsideLeast', 'Four-jaw smallest bore', 'Smallest bore that the reversed jaws open in.'),
    length('fourJawInsideMost', 'Four-jaw largest bore', 'Largest bore that the reversed jaws open in.'),
    length(
      'jawReach',
      'Jaws beyond chuck body',
      'How far opened jaws stand out beyond the radius of the chuck’s body.',
    ),
    length('steadyLeast', 'Steady, smallest', 'Smallest diameter that the fixed steady closes on.'),
    length('steadyMost', 'Steady, largest', 'Largest diameter that the fixed steady opens to.'),
    length('steadyWidth', 'Steady width', 'Along the bed.'),
    length('crossTravel', 'Cross-slide travel', 'From stop to stop.'),
    length('topSlideTravel', 'Top-slide travel', 'From stop to stop.'),
    length('toolHeight', 'Height of tool seat under centres', 'From the seat of the tool up to the line of centres.'),
    length(
      'saddleHead',
      'Saddle towards headstock',
      'From the tool’s edge to the saddle’s end on the headstock’s side.',
    ),
    length(
      'saddleTail',
      'Saddle towards tailstock',
      'From the tool’s edge to the saddle’s end on the tailstock’s side.',
    ),
    length('crossSlideWidth', 'Cross-slide width', 'Along the bed; half of it lies to each side of the tool.'),
    length('toolBlockWidth', 'Tool block width', 'Along the bed, with the top slide beneath if that is wider.'),
    length('toolOverhang', 'Tool’s reach before its block', 'From the block to the edge, as it is usually set.'),
    slowest,
    fastest,
    power,
  ],
  'drill press': [
    length('throat', 'Throat', 'From the column to the line of the spindle.'),
    length('daylight', 'Daylight', 'From the nose of the spindle to the table at its lowest.'),
    length('daylightBase', 'Daylight over base', 'From the nose of the spindle to the foot of the machine.'),
    length('quillTravel', 'Quill travel', 'From up to down.'),
    length('chuckLeast', 'Chuck, smallest', 'Smallest shank that it holds.'),
    length('chuckMost', 'Chuck, largest', 'Largest shank that it holds.'),
    length('chuckLength', 'Chuck length', 'From the nose of the spindle to the ends of the jaws.'),
    ...table,
    slowest,
    fastest,
    power,
  ],
  'milling machine': [
    ...travels,
    length('daylight', 'Daylight', 'From the nose of the spindle to the table at its lowest.'),
    length('throat', 'Throat', 'From the column to the line of the spindle.'),
    ...table,
    length('chuckMost', 'Largest shank', 'Largest shank that the spindle takes.'),
    slowest,
    fastest,
    power,
  ],
  shaper: [
    length('stroke', 'Longest stroke', 'Of the ram.'),
    length('underRam', 'Height under ram', 'From the table at its lowest to the underside of the ram.'),
    length('headTravel', 'Head travel', 'Of the down feed.'),
    length('tableTravel', 'Table travel', 'Across the stroke.'),
    length('tableRise', 'Table rise', 'Upright travel of the table.'),
    ...table,
    other('slowestStrokes', 'rpm', 'Slowest', 'Double strokes per minute.'),
    other('fastestStrokes', 'rpm', 'Fastest', 'Double strokes per minute.'),
    power,
  ],
  planer: [
    length('stroke', 'Longest stroke', 'Of the table.'),
    length('betweenUprights', 'Between uprights', 'Clear width.'),
    length('underRail', 'Height under rail', 'With the rail at its highest.'),
    length('headTravel', 'Head travel', 'Of the down feed.'),
    length('tableTravel', 'Head travel across', 'Along the rail.'),
    ...table,
    power,
  ],
  grinder: [
    ...travels,
    length('wheelDiameter', 'Wheel diameter', 'As it is now.'),
    length('wheelWidth', 'Wheel width', 'Of its face.'),
    length('underWheel', 'Height under wheel', 'With the head at its highest.'),
    fastest,
    power,
  ],
  bandsaw: [
    length('cutHeight', 'Height of cut', 'Under the guide.'),
    length('throat', 'Throat', 'From the blade to the frame.'),
    length('viseOpening', 'Vise opening', 'Of a saw that cuts off.'),
    other('slowestBand', 'speed', 'Slowest band', 'Metres per minute.'),
    other('fastestBand', 'speed', 'Fastest band', 'Metres per minute.'),
    power,
  ],
  'surface plate': [length('plateLength', 'Length', 'Of the plate.'), length('plateWidth', 'Width', 'Of the plate.')],
  vise: [
    length('opening', 'Opening', 'Widest between the jaws.'),
    length('jawWidth', 'Jaw width', 'Along the jaws.'),
    length('jawDepth', 'Jaw depth', 'From the top of the jaws to the bed.'),
  ],
  furnace: [
    length('bore', 'Bore', 'Clear diameter inside.'),
    length('depth', 'Depth', 'Clear depth over the plinth.'),
    other('highest', 'temperature', 'Highest temperature', 'That it keeps.'),
    other('heatRate', 'rate', 'Heat to the metal', 'Kilowatts that reach the charge, from a melt that was timed.'),
    power,
  ],
  crucible: [
    other(
      'capacity',
      'volume',
      'Working capacity',
      'Litres of metal, filled as full as you carry it: weigh it with water.',
    ),
    length('outside', 'Diameter', 'Outside, at its widest.'),
    length('height', 'Height', 'Outside.'),
    other('emptyMass', 'mass', 'Mass empty', 'With what stays in it.'),
  ],
  flask: [
    length('insideLength', 'Length inside', 'Clear.'),
    length('insideWidth', 'Width inside', 'Clear.'),
    length('copeHeight', 'Cope height', 'Of the upper half; of a box in one piece nothing.'),
    length('dragHeight', 'Drag height', 'Of the lower half, or of the box.'),
    other('boxMass', 'mass', 'Mass of cope', 'Without sand.'),
  ],
  'hot-wire bow': [
    length('wireLength', 'Wire length', 'Between the posts of the bow.'),
    length('throat', 'Depth of bow', 'From the wire to the back.'),
    length('kerf', 'Kerf', 'Foam that the wire melts away, measured on a trial cut.'),
  ],
};

/** What a type has a figure for, by key. */
export const machineFigure = (type: MachineType, key: string): MachineFigure | undefined =>
  machineFigures[type].find((figure) => figure.key === key);
