/** What each number of a trace is called, and how it is had. Part of the catalogue in text.ts. */
export const readingText = {
  maximum: {
    name: 'maximum force',
    method:
      'The largest true reading before parting, spikes left out. Where the noise would lift it by more than 0.2 %, the top of a parabola fitted about the highest stretch.',
  },
  maximumUncertainty: {
    name: 'its standard uncertainty',
    method:
      'From the class of the rig, its resolution, the noise and the sampling at the peak. Twice this is the usual expanded uncertainty.',
  },
  timeAtMaximum: {
    name: 'time at the maximum',
    method: 'When the maximum was reached, on the clock of the recording.',
  },
  parting: {
    name: 'parting force',
    method:
      'The last force before the earliest loss of more than half of it that never comes back. It is not the maximum.',
  },
  timeAtParting: { name: 'time at parting', method: 'When the last force before parting was recorded.' },
  stiffness: {
    name: 'stiffness',
    method:
      'Slope of the elastic part: lines through every stretch between 5 % and 85 % of the maximum, averaged by how well they fit.',
  },
  knee: {
    name: 'knee force',
    method: 'Offset method: where the curve crosses a line parallel to the elastic one, moved by the offset.',
  },
  extensionAtMaximum: {
    name: 'extension at the maximum',
    method: 'Counted from the toe-corrected origin: the elastic line produced to zero force.',
  },
  extensionAtParting: {
    name: 'extension at parting',
    method: 'Counted from the toe-corrected origin: the elastic line produced to zero force.',
  },
  plastic: {
    name: 'plastic extension',
    method: 'What is left of the extension after the elastic part is taken off.',
  },
  elongation: { name: 'total ultimate elongation', method: 'Extension at parting over the gauge length.' },
  energyToMaximum: { name: 'energy to the maximum', method: 'Area under force against extension up to the maximum.' },
  energyToParting: { name: 'energy to parting', method: 'Area under force against extension up to parting.' },
  stress: { name: 'mean stress at the maximum', method: 'Maximum force over the nominal area of both legs.' },
  tableSpeed: { name: 'table speed', method: 'Slope of table travel against time in the loaded part.' },
  forceRate: { name: 'force rate', method: 'Slope of force against time in the elastic part.' },
  zero: {
    name: 'zero offset',
    method: 'Mean of the unloaded start, taken off every reading; none where the start may be a preload.',
  },
  resolution: { name: 'resolution', method: 'The smallest step between neighbouring readings.' },
  noise: {
    name: 'noise',
    method: 'Standard deviation from the median of second differences, which a trend or a spike does not move.',
  },
  samples: { name: 'samples', method: 'How many readings the recording holds.' },
  rate: { name: 'sampling rate', method: 'One over the typical step between readings.' },
  duration: { name: 'duration', method: 'From the first reading to the last.' },
} as const;

/** How the other numbers are had. */
export const methodText = {
  gauged: (readings: number, u: string | null) =>
    `Mean of ${readings} ${readings === 1 ? 'reading' : 'readings'}. ${u === null ? 'The uncertainty of a reading is not known.' : `Standard uncertainty of one reading: ${u} (calibration, resolution, repeat readings).`}`,
  zincOff: 'Where the bar was gauged over the zinc, twice the mean zinc thickness of the piece is taken off first.',
  area: 'From the diameters at right angles: pi/4 times their product for each leg, both legs together, mean over the links.',
  leastArea: 'The same for the link with the least steel.',
  nominalArea: 'Both legs at the nominal size: pi/2 times its square.',
  outOfRound: 'Greatest difference of two diameters read at right angles in one place.',
  zincMean:
    'Mean of all thickness readings of the piece. The spread is the standard uncertainty of that mean from the scatter of the readings alone.',
  zincLeast: 'The least of the means of the links that were read.',
} as const;
