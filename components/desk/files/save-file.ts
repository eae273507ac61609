/** Hands a text to the browser to be saved as a file. */
export function saveFile(name: string, text: string, mediaType: string): void {
  saveBytes(name, new TextEncoder().encode(text), mediaType);
}

/** Hands bytes to the browser to be saved as a file. */
export function saveBytes(name: string, bytes: Uint8Array, mediaType: string): void {
  const url = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: mediaType }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // Taken back only once the browser has surely begun to read it.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
