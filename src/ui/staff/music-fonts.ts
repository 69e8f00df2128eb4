import academicoUrl from '@vexflow-fonts/academico/academico.woff2?url';
import bravuraUrl from '@vexflow-fonts/bravura/bravura.woff2?url';

/** Family names of the music fonts, both under the SIL Open Font Licence and served from our own address. */
export const MUSIC_FONTS = { music: 'Bravura', text: 'Academico' } as const;

let loading: Promise<void> | null = null;

/** Loads both music fonts once for the life of the page. Rejects when a file cannot be had; the next call tries again. */
export function loadMusicFonts(): Promise<void> {
  loading ??= loadBoth().catch((failure: unknown) => {
    loading = null;
    throw failure;
  });
  return loading;
}

async function loadBoth(): Promise<void> {
  const faces = [new FontFace(MUSIC_FONTS.music, `url(${bravuraUrl})`), new FontFace(MUSIC_FONTS.text, `url(${academicoUrl})`)];
  for (const face of await Promise.all(faces.map((face) => face.load()))) document.fonts.add(face);
}
