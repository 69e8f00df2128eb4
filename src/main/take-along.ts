import text400Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url';
import text500Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-500-normal.woff?url';
import text700Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff?url';
import text800Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-800-normal.woff?url';
import more400Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff?url';
import more500Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-500-normal.woff?url';
import more700Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff?url';
import more800Url from '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-800-normal.woff?url';
import academicoUrl from '@vexflow-fonts/academico/academico.otf?url';
import academicoBoldUrl from '@vexflow-fonts/academico/academico-bold.otf?url';
import bravuraUrl from '@vexflow-fonts/bravura/bravura.otf?url';
import { decodeSounds } from '../device/decode-sounds';
import { makeInWorker } from '../device/maker';
import { openFile } from '../device/open-file';
import type { Desk } from '../state/desk';
import type { SheetDesk } from '../state/sheet/sheet-desk';
import { createTakeAlong, type TakeAlong } from '../state/take-along/take-along';
import { drawSheetsOf } from '../ui/take-along/draw-sheet';

/** The fonts of the sheet as files that can be read glyph by glyph, by the names that the pages use. All under the SIL Open Font Licence. */
const FONTS: Readonly<Record<string, string>> = {
  music: bravuraUrl,
  serif: academicoUrl,
  'serif bold': academicoBoldUrl,
  'text 400': text400Url,
  'text 500': text500Url,
  'text 700': text700Url,
  'text 800': text800Url,
  'text 400 more': more400Url,
  'text 500 more': more500Url,
  'text 700 more': more700Url,
  'text 800 more': more800Url,
};

/** Take-along on a desk, joined to the device. Fetched when it is first opened. */
export function takeAlongOn(desk: Desk, sheets: () => Promise<SheetDesk>): TakeAlong {
  const sounds = new Map<number, ReturnType<typeof decodeSounds>>();
  let fonts: Promise<{ name: string; bytes: ArrayBuffer }[]> | null = null;
  return createTakeAlong(desk.desk, {
    make: makeInWorker,
    draw: drawSheetsOf(desk, sheets),
    openFile,
    now: Date.now,
    sounds: (rate) => {
      const known = sounds.get(rate) ?? decodeSounds(new URL('samples/', document.baseURI).href, rate);
      sounds.set(rate, known);
      known.catch(() => sounds.delete(rate));
      return known;
    },
    fonts: () => {
      fonts ??= Promise.all(Object.entries(FONTS).map(async ([name, url]) => ({ name, bytes: await fetched(url) })));
      fonts.catch(() => {
        fonts = null;
      });
      return fonts;
    },
  });
}

async function fetched(url: string): Promise<ArrayBuffer> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) throw new Error('the fonts of the sheet could not be fetched');
  return response.arrayBuffer();
}
