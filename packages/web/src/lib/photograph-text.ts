/** Words of photographs, wherever they are shown. */
export const photographText = {
  label: 'Photographs',
  none: 'No photograph of it yet.',
  noneCure:
    'Take one square on and one aslant, a scale in the frame. The file is kept as the camera made it, with its hash in the ledger.',
  add: 'Add photographs',
  caption: 'What is to be seen on them',
  taking: (count: number) => `${count === 1 ? 'One photograph is' : `${count} photographs are`} on the way …`,
  notAPicture: (name: string) =>
    `“${name}” is no picture that a screen can show. Choose JPEG, PNG or WebP, or take it with the camera of this tablet.`,
  notSent: (name: string, detail: string) => `“${name}” was not kept. ${detail} Choose it again.`,
  entry: (what: string) => `photograph of ${what}`,
  alt: (what: string, caption: string | null) => `Photograph of ${what}${caption === null ? '' : `: ${caption}`}`,
  large: 'Show large',
  close: 'Close',
  file: 'Open the file as it was taken',
  takenBy: (by: string | null, at: string | null) =>
    [by, at === null ? null : at.slice(0, 16).replace('T', ' ')].filter((one) => one !== null).join(', '),
} as const;
