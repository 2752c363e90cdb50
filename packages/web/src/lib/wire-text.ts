import type { DoubtKind, WireFinding } from '@provinghouse/contract';

interface FindingWords {
  readonly words: string;
  readonly cure: string;
}

const doubtCure: Readonly<Record<DoubtKind, string>> = {
  'below zero':
    'Load the hook a little by hand: the force must rise. If it falls, turn the leads of the cell, or say isReversed at its channel in the file of the rig.',
  'sign turned': 'See the leads of the cell and the setting of the panel; the force must rise under load.',
  'unit switched': 'Set the panel back to the unit its channel names, or change the unit in the file of the rig.',
  stuck: 'See whether the panel is on hold (peak, freeze) or the cell has come off.',
};

/** What was found on the wires, and its cure. */
function findingWords(finding: WireFinding): FindingWords {
  switch (finding.kind) {
    case 'no force':
      return {
        words: 'No channel is the force.',
        cure: 'Name a channel force in the file of the rig, or give one the signal force.',
      };
    case 'two of a kind':
      return {
        words: `Several channels are the ${finding.signal}: ${finding.channels.join(', ')}.`,
        cure: 'Leave all but one out of the file of the rig.',
      };
    case 'away':
      return {
        words: `There is no connection. ${finding.words ?? ''}`.trim(),
        cure: 'See that the panel is on, that the cable holds, and that address or port are those in the file of the rig. It is tried again by itself.',
      };
    case 'silent':
      return {
        words: 'The connection stands, but nothing comes.',
        cure: 'Set the panel to send by itself; one that speaks only when it is asked is not read.',
      };
    case 'fell silent':
      return {
        words: `Nothing has come for ${finding.seconds.toFixed(0)} s, though the wire was heard before.`,
        cure: 'See the cable and the panel.',
      };
    case 'garbled':
      return {
        words: 'What comes is no plain text: the speed (baud) or the parity is wrong.',
        cure: 'Set baud and parity in the file of the rig as the panel has them; 9600 with 8 data bits, no parity and one stop bit is common.',
      };
    case 'none read':
      return {
        words: 'Something comes, and nothing of it can be read.',
        cure:
          finding.pattern === null
            ? 'Hold what came against the file of the rig: path, register, unit.'
            : 'Write the pattern as the line stands, with a field in braces for each number.',
      };
    case 'channel missing':
      return {
        words: `${finding.channel} is not heard.`,
        cure: 'See its topic, register or place in the file of the rig, and whether its cable holds.',
      };
    case 'some unread':
      return {
        words: `${shareText(finding.share)} of what comes cannot be read (${finding.why}), such as “${finding.example}”.`,
        cure: /no number/.test(finding.why)
          ? 'The panel sends a word in place of a number: an overload, a cell that is not connected, a zero being set.'
          : 'It is kept and counted. If readings are among it, widen the pattern.',
      };
    case 'doubt':
      return { words: finding.words, cure: doubtCure[finding.doubt] };
    case 'still':
      return {
        words: `${finding.channel} has stood at exactly ${finding.value} ${finding.unit} all the time: no digit has changed.`,
        cure: 'A machine at rest may do that. Load it a little and see the digits move before you pull.',
      };
    case 'out of range':
      return {
        words: `${finding.channel} left its range ${finding.count} ${finding.count === 1 ? 'time' : 'times'}.`,
        cure: 'See its unit and its range in the file of the rig.',
      };
    case 'clock':
      return {
        words: `The clock on the wire runs ${finding.ratio.toPrecision(3)} times as fast as ours.`,
        cure: 'See the unit of the time. For practice in a hurry say isClockFree in the file of the rig.',
      };
  }
}

function shareText(share: number): string {
  return share < 0.1 ? `${(100 * share).toFixed(1)}\u00a0%` : `${Math.round(100 * share)}\u00a0%`;
}

/** Words of the list of rigs and of the test of their wires. */
export const wireText = {
  link: 'Test the wires',
  title: (rig: string) => `Wires of ${rig}`,
  lead: 'What comes over the wires before any pull. Nothing is recorded and nothing is sent to the machine.',
  practice: 'PRACTICE: what is heard is simulated.',
  opening: 'Opening the wires …',
  listening: 'Listening …',
  verdict: 'Verdict',
  allHeard: (count: number) =>
    count === 1 ? 'The one channel is heard.' : `${count === 2 ? 'Both' : `All ${count}`} channels are heard.`,
  rates: (rate: string, spread: string) => `${rate} readings a second, arrivals steady within ${spread}.`,
  eachRate: (channel: string, rate: string) => `${channel} ${rate} a second`,
  steady: (spread: string) => `arrivals steady within ${spread}`,
  wrong: 'Not ready for a pull.',
  doubtful: 'Look at this before you pull.',
  cure: 'What to do',
  lineThatCame: 'What came',
  pattern: 'Pattern',
  more: 'Also',
  finding: findingWords,
  heard: 'Heard',
  channel: {
    readings: 'readings',
    rate: 'readings a second',
    spread: 'spread of arrival',
    jitter: 'spread of its own time',
    longest: 'longest wait',
    lowest: 'lowest',
    highest: 'highest',
    unit: 'unit on the wire',
    none: 'not heard yet',
    doubts: 'doubts',
  },
  source: {
    bytes: (bytes: string) => `${bytes} bytes`,
    open: 'connected',
    away: 'not connected',
  },
  raw: 'As it came',
  rawNote:
    'The last thirty, the newest at the bottom. All but plain ASCII is written \\xNN; registers are bytes in hexadecimal.',
  rawNone: 'Nothing has come yet.',
  hold: 'Hold still',
  goOn: 'Go on',
  unread: 'Not read',
  unreadNone: 'Everything that came was read.',
  unreadCount: (count: string, bytes: string) => `${count} pieces, ${bytes} bytes`,
  unreadHead: { why: 'why', count: 'how often', example: 'the newest' },
  troubles: 'Troubles',
  over: {
    limit: 'The test has ended by itself, so that the wires are not kept for nobody.',
    pull: 'A pull is being armed, and has the wires now.',
    closed: 'The server was stopped.',
  },
  again: 'Listen again',
  refused: 'The wires cannot be tested now',
  toRig: 'Go to the rig',
  left: (time: string) => `The test ends by itself in ${time}. A pull that is armed meanwhile takes the wires.`,
} as const;

export const rigListText = {
  title: 'Rigs',
  lead: 'The machines of this bench. Each pull is watched and recorded here; no machine is moved.',
  label: 'On this bench',
  none: 'No rig stands on this bench.',
  noneCure:
    'A rig stands in Kit as kit/RIG.json below the folder of the record. A practice rig comes with “provinghouse start --practice”.',
  from: 'Readings from',
  practice: 'practice, simulated',
  state: {
    free: 'free',
    armed: (piece: string, pull: string) => `armed for ${piece}, pull ${pull}`,
    running: (piece: string, pull: string) => `pull ${pull} of ${piece} runs`,
    sealing: (piece: string, pull: string) => `pull ${pull} of ${piece} is being sealed`,
    unfinished: (count: number) => `${count} broken-off ${count === 1 ? 'recording waits' : 'recordings wait'}`,
  },
  pieces: (count: number, campaigns: string) => `${count} ${count === 1 ? 'piece' : 'pieces'} to pull in ${campaigns}`,
  noPiece: (campaigns: string) => `every piece of ${campaigns} has been pulled`,
  noCampaign: 'no campaign knows it',
  arm: 'Arm a pull',
  watch: 'Watch the pull',
  finish: 'See what waits',
} as const;
