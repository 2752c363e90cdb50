/** Words of the ways by keyboard, of the first visit and of the guided start. */
export const goToText = {
  open: 'Go to …',
  title: 'Go to',
  field: 'Name of a place, a piece or a campaign',
  piece: 'piece',
  campaign: 'campaign',
  bench: 'bench',
  how: 'Arrow keys choose, Enter goes there, Escape closes.',
  none: 'Nothing is called that.',
  keysTitle: 'Keys',
  keys: [
    ['Ctrl K', 'Go to a place, a piece, a campaign'],
    ['/', 'the same'],
    ['?', 'These keys'],
    ['Esc', 'Close what lies over the page'],
  ],
  keysFoot: 'Screens with keys of their own show them beside what they do.',
} as const;

export const startText = {
  title: 'Five minutes’ start',
  lead: 'A walk through one campaign that is done already. Every figure in it is invented and says so; nothing you do here touches a rig.',
  steps: 'The walk',
  of: (done: number, all: number) => `${done} of ${all} done`,
  done: 'done',
  open: 'Open',
  step: {
    who: {
      title: 'Say who is at the bench',
      words: 'Press “Who is it?” at the top right and give a short name. It stands beside everything you enter.',
    },
    board: {
      title: 'See the whole campaign on its board',
      words: 'Thirty pieces down, the places across: what was gauged, pulled, how it broke, where it stands.',
    },
    piece: {
      title: 'Open a piece, then a number',
      words: 'Every underlined number opens to what it was computed from, by which rule, and how uncertain it is.',
    },
    findings: {
      title: 'Read the findings',
      words: 'Which chains conform, which differ by more than their scatter, what a long chain would hold.',
    },
    ledger: {
      title: 'Look into the ledger',
      words: 'Who entered what, when and why. Nothing is ever overwritten unseen.',
    },
    reckoner: {
      title: 'Ask the reckoner',
      words: 'One calculation at a time, for a quick answer, with its formula and its source.',
    },
    own: {
      title: 'Begin a campaign of your own',
      words: 'The question first, then who claims what, then how many pieces.',
    },
  },
  offer: 'Look at a finished campaign first',
  offerWords:
    'The demo campaign is invented and says so on every page: six chains for mussel mooring bridles, thirty pieces pulled.',
  bringDemo: 'Open the demo campaign',
  bringing: 'Bringing it in …',
  guided: 'Take the five minutes’ start',
  begin: 'Begin a campaign of your own',
  beginWords: 'Write down the question as it was asked, and how it will be decided. Nothing else is needed to begin.',
  fromFiles: 'A data package that was filled in elsewhere is brought in from the command line:',
} as const;
