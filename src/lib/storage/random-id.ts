/**
 * An id that nothing else has: 128 random bits as 32 hexadecimal digits. `crypto.randomUUID` would do, but browsers
 * give it to encrypted pages alone, and a hospital's own server may hand this program out without encryption.
 */
export function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
