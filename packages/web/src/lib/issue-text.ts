/** Words of the place from which a finding leaves the house. */
export const issueText = {
  title: 'Issue',
  lead: 'The report and the data from which anybody can derive every number of it again. First what is still open.',
  points: 'Before it leaves',
  pointsNote: 'Nothing here forbids it: what is open is for the person who signs to weigh.',
  standing: {
    conforms: 'settled',
    inconclusive: 'to be weighed',
    'does not conform': 'not yet',
    'not judged': 'being checked',
  },
  there: 'Go there',
  andMore: (count: number) => `and ${count} more`,
  point: {
    plan: {
      settled: 'The plan was frozen before the first pull.',
      open: 'The plan was never frozen: nobody can see what was planned beforehand.',
    },
    blind: { settled: 'The campaign was blind, and is unblinded.', open: 'The campaign is still blind.' },
    gauged: { settled: 'Every piece is gauged.', open: 'Not gauged:' },
    pulled: { settled: 'Every piece is pulled.', open: 'Not pulled:' },
    read: { settled: 'Every break was read.', open: 'Pulled, and the break was not read:' },
    twice: { settled: 'Every break was read by two people.', open: 'Read by one person only:' },
    judged: { settled: 'Every product is judged.', open: 'Not judged:' },
    memory: {
      settled: 'No limit rests on memory alone.',
      open: 'Some limits rest on memory: check them against a bought copy of the standard.',
    },
    doubts: { settled: 'Nothing is doubted.', open: 'Doubts that stand in the report:' },
    ledger: { settled: 'The ledger is whole, and everything kept agrees with it.', open: 'The ledger:' },
  },
  report: 'Report',
  reportNote: 'PDF/A, made anew from the record',
  reportWords: (pieces: number) =>
    `Verdicts, budgets, pictures and doubts for all ${pieces} pieces, with the hash of the ledger on which it rests.`,
  reportBlind: 'While the campaign is blind it names no product and no supplier.',
  openReport: 'Open the report',
  package: 'Data package',
  packageNote: 'A ZIP of tables and recordings',
  packageWords:
    'Every row and every recording, with their SHA-256. Whoever brings it in with “provinghouse bring-in” gets the same finding, to the last digit.',
  packageBlind: 'The data package holds every name, so it is handed out after the unblinding.',
  takePackage: 'Take the data package',
  head: 'Head of the ledger',
  headWords: 'Whoever notes this hash now can show later that nothing written before was changed.',
} as const;
