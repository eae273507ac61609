/** Requests that are under way. When the next cannot even be made, nobody waits for these any more: their failure is no news. */
export class Requests {
  readonly #all: Promise<unknown>[] = [];

  add(request: Promise<unknown>): void {
    request.catch(() => undefined);
    this.#all.push(request);
  }

  async done(): Promise<void> {
    await Promise.all(this.#all);
  }
}
