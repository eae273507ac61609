// Bytes through the streams of a browser.

export function streamOf(bytes: Uint8Array<ArrayBuffer>): ReadableStream<Uint8Array<ArrayBuffer>> {
  return new ReadableStream({
    start(controller) {
      controller.enqueue(bytes);
      controller.close();
    },
  });
}

/** All bytes of the stream; `undefined`, and no more is unpacked, once they are more than `most`. */
export async function all(
  stream: ReadableStream<Uint8Array>,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const reader = stream.getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel();
      return undefined;
    }
    parts.push(value);
  }
  const joined = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}
