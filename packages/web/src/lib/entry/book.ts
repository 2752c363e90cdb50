/** A book is a campaign, by its code, or the book of the bench: people, kit and specifications that belong to no campaign. */
export const bench = '_bench';

/** Address of a book in the API. */
export function bookAddress(book: string): string {
  return book === bench ? '/api/bench' : `/api/campaigns/${encodeURIComponent(book)}`;
}

/** Address of a file of a book. */
export function fileAddress(book: string, path: string): string {
  return `${bookAddress(book)}/files/${path.split('/').map(encodeURIComponent).join('/')}`;
}
