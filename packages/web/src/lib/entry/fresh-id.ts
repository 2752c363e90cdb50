/** A name nothing else has. `randomUUID` is there only where the page came over TLS or from this machine; a tablet on the bench's own network has neither. */
export function freshId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
