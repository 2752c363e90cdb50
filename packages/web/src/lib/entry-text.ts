const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

/** How a day and a time are written; no line ends in the middle of one. Whoever copies it is understood. */
const day = '2026-\u206011-\u206025';
const written = { day, time: `${day}\u00a014:30` };

/** Words of everything that is entered, on whatever screen. */
export const entryText = {
  /** Written into the ledger where nobody said who they are. */
  nobody: 'not named',
  who: {
    label: 'At the bench',
    none: 'Who is it?',
    title: 'Who is at the bench?',
    words:
      'This short name is written into the ledger beside everything that is entered in this browser. It is no password: it says who, it does not prove it.',
    field: 'Short name',
    keep: 'It is me',
    known: 'Known here',
  },
  kept: {
    label: 'State of what was entered',
    kept: (seq: number) => `kept, ledger entry ${seq}`,
    idle: 'nothing entered yet on this visit',
    sending: (count: number) => `${plural(count, 'entry', 'entries')} on the way …`,
    cutOff: (count: number) =>
      `The server does not answer. ${plural(count, 'entry waits', 'entries wait')} in this browser, nothing is lost, and ${count === 1 ? 'it is' : 'they are'} sent again every few seconds.`,
    full: (count: number) =>
      `This was not kept: the store of this browser is full, with ${plural(count, 'entry', 'entries')} waiting in it. Leave it on the screen, bring the server back so that those are sent, then enter it again.`,
    refused: (count: number) => `${plural(count, 'entry', 'entries')} refused`,
    refusedTitle: 'Refused by the record',
    refusedWords: 'Nothing of these was kept. Enter them again with what is asked, or let them go.',
    letGo: 'Let it go',
    now: 'Send now',
  },
  form: {
    keep: 'Keep',
    cancel: 'Cancel',
    change: 'change',
    choose: 'choose …',
    none: 'not recorded',
    required: 'needed',
    yes: 'yes',
    no: 'no',
  },
  correction: {
    open: 'Correct',
    title: (what: string) => `Correct ${what}`,
    why: 'Why is it corrected?',
    whyHint: 'The old value stays in the ledger, with this reason and your name.',
    keep: 'Keep the correction',
    nothing: 'Nothing is changed yet.',
    withdraw: 'Take out',
    withdrawTitle: (what: string) => `Take ${what} out of the record?`,
    withdrawWhy: 'Why is it taken out?',
    conflict: (who: string, at: string) =>
      `${who} changed this at ${at}, while you were at it. Your entry is not lost: compare, then keep yours over theirs, or leave theirs.`,
    theirs: 'there now',
    yours: 'yours',
    column: 'cell',
    keepYours: 'Keep mine over theirs',
    leaveTheirs: 'Leave theirs',
  },
  when: {
    dayHint: `year-month-day, as ${written.day}`,
    timeHint: `as ${written.time}, by the clock of this bench`,
    today: 'today',
    now: 'now',
    /** After the words of the key, for who hears them without seeing where it stands. */
    into: (field: string) => `into ${field}`,
    day: {
      empty: `is empty. Write it as ${written.day}`,
      shape: `is not one certain day. Write it as ${written.day}`,
      calendar: 'is a day that the calendar does not have. Look at its month and day again',
    },
    time: {
      empty: `is empty. Write it as ${written.time}`,
      shape: `is not one certain day and time. Write it as ${written.time}`,
      calendar: 'is a day that the calendar does not have. Look at its month and day again',
      clock: 'is a time that no clock shows. A day runs from 00:00 to 23:59',
    },
    leftOut: 'was left out by the clock of this bench, which was put forward then. Write the time that it showed',
  },
  drawn: {
    link: (link: number) => `Link ${link}`,
    gripped: 'Gripped link',
    look: 'Look again before you keep it',
    lookCure: 'Change what is wrong, or keep it as it stands.',
    keepAsIs: 'Keep it as it stands',
  },
  fault: {
    typed: (words: string) => `This ${words}.`,
  },
} as const;
