/**
 * Stands in for `Blob` in the engine: some browsers cannot read one that was made in a worker of a page
 * opened from disk, so what is packed there stays plain bytes. The build puts it in the global's place.
 */
export class Blob {
  constructor(private readonly parts: readonly (ArrayBuffer | Uint8Array)[]) {}

  arrayBuffer(): Promise<ArrayBuffer> {
    const arrays = this.parts.map((part) => new Uint8Array(part));
    const bytes = new Uint8Array(arrays.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const one of arrays) {
      bytes.set(one, at);
      at += one.length;
    }
    return Promise.resolve(bytes.buffer);
  }
}
