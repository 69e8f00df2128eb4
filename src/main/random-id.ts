/** A name for a new chart. Made here because `crypto.randomUUID` is missing where the page is served without https. */
export const randomId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, '0')).join('');
