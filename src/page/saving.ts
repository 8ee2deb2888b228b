/** Files out of the page. Nothing leaves the machine. */
import { scriptData, type Given } from '../letter/live.js';

/** Offers a file to be saved. */
export function save(name: string, type: string, content: string | Uint8Array | Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(
    content instanceof Blob ? content : new Blob([content as BlobPart], { type }),
  );
  link.download = name;
  link.click();
  // The browser takes hold of the data on the click; a while later it can go.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** The whole page as it stands, to be opened again elsewhere. @param given what it is to start from */
export function letterAsFile(given: Given): string {
  const copy = document.documentElement.cloneNode(true) as HTMLElement;
  copy.removeAttribute('data-ready');
  for (const mark of ['data-phase', 'data-reader'])
    copy.querySelector('body')?.removeAttribute(mark);
  for (const island of copy.querySelectorAll('[data-island]')) island.replaceChildren();
  // Recorded days were of the house as it was sent; cards are made when they are asked for.
  copy.querySelector('[data-part=recorded][hidden]')?.remove();
  copy.querySelector('[data-part=cards]')?.replaceChildren();
  for (const mark of ['data-older', 'data-stale'])
    for (const element of copy.querySelectorAll(`[${mark}]`)) element.removeAttribute(mark);
  for (const tools of copy.querySelectorAll('.tools')) tools.remove();
  copy.querySelector('#given')!.textContent = scriptData(given);
  return `<!doctype html>\n${copy.outerHTML}\n`;
}

/** A picture of the letter as dots, twice as fine as it is shown. */
export async function asPng(svg: string): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [image.naturalWidth * 2, image.naturalHeight * 2];
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) =>
        blob === null ? reject(new Error('the picture could not be drawn')) : resolve(blob),
      'image/png',
    ),
  );
}
