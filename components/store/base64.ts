/** Bytes as text: records and the browser's local storage take text, and a checksum is over text. */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 8_192)
    text += String.fromCharCode(...bytes.subarray(at, at + 8_192));
  return btoa(text);
}

/** The bytes of a text; undefined where it is none of ours. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    const plain = atob(text);
    const bytes = new Uint8Array(plain.length);
    for (let at = 0; at < plain.length; at += 1) bytes[at] = plain.charCodeAt(at);
    return bytes;
  } catch {
    return undefined;
  }
}
