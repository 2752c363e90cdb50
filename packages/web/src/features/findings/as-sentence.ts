/** The record writes some doubts as phrases; on their own they stand as a sentence. */
export function asSentence(phrase: string): string {
  return `${phrase.charAt(0).toUpperCase()}${phrase.slice(1)}${/[.!?]$/.test(phrase) ? '' : '.'}`;
}
