/** What can be heard of a pull. */
export const cues = ['rule', 'near', 'parted'] as const;
export type Cue = (typeof cues)[number];

interface Tone {
  readonly hertz: number;
  readonly from_s: number;
  readonly lasts_s: number;
}

/** Each cue has a rhythm of its own, so that they can be told apart in noise and by an ear that hears high tones badly. */
const tones: Readonly<Record<Cue, readonly Tone[]>> = {
  rule: [{ hertz: 660, from_s: 0, lasts_s: 0.25 }],
  near: [
    { hertz: 880, from_s: 0, lasts_s: 0.12 },
    { hertz: 880, from_s: 0.2, lasts_s: 0.12 },
    { hertz: 880, from_s: 0.4, lasts_s: 0.12 },
  ],
  parted: [
    { hertz: 520, from_s: 0, lasts_s: 0.3 },
    { hertz: 260, from_s: 0.3, lasts_s: 0.6 },
  ],
};

const ramp_s = 0.015;
const loudness = 0.25;

let context: AudioContext | null = null;

/** Wakes the sound; a browser lets that happen only on a press. */
export function wakeSound(): void {
  context ??= new AudioContext();
  void context.resume();
}

/** Sounds a cue; silent before the sound was woken. */
export function sound(cue: Cue): void {
  if (context === null || context.state !== 'running') return;
  for (const tone of tones[cue]) play(context, tone);
}

function play(audio: AudioContext, { hertz, from_s, lasts_s }: Tone): void {
  const begins = audio.currentTime + from_s;
  const ends = begins + lasts_s;
  const oscillator = new OscillatorNode(audio, { frequency: hertz, type: 'triangle' });
  const volume = new GainNode(audio, { gain: 0 });
  volume.gain.setValueAtTime(0, begins);
  volume.gain.linearRampToValueAtTime(loudness, begins + ramp_s);
  volume.gain.setValueAtTime(loudness, ends - ramp_s);
  volume.gain.linearRampToValueAtTime(0, ends);
  oscillator.connect(volume).connect(audio.destination);
  oscillator.start(begins);
  oscillator.stop(ends);
}
