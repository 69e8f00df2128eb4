import type { Ink, Mark } from '../../layout/sheet/page-drawing';

/** Letters that the fonts of a file may not have: everything but Latin, signs, and music. */
const FOREIGN = /[^\u0020-\u024F\u1E00-\u1EFF\u2000-\u22FF\u2600-\u26FF\uE000-\uF8FF\u{1D100}-\u{1D1FF}]/u;

/** Pixels in a point: 288 to the inch. */
const FINENESS = 4;

/** True when a word must go into a file as a picture, so that nothing is lost of it. */
export const needsPicture = (word: string): boolean => FOREIGN.test(word);

/** A word as the browser draws it, with whatever font it finds, in the box (points) where it stands on the page. */
export function wordPicture(
  word: string,
  style: CSSStyleDeclaration,
  size: number,
  box: { readonly left: number; readonly top: number; readonly width: number; readonly height: number },
  ink: Ink,
): Mark[] {
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(box.width * FINENESS);
  canvas.height = Math.ceil(box.height * FINENESS);
  const pen = canvas.getContext('2d');
  if (pen === null || canvas.width === 0 || canvas.height === 0) return [];
  pen.font = `${style.fontWeight} ${size * FINENESS}px ${style.fontFamily}`;
  const { fontBoundingBoxAscent: above, fontBoundingBoxDescent: below } = pen.measureText(word);
  pen.fillText(word, 0, (canvas.height - above - below) / 2 + above, canvas.width);
  const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
  const grey = (ink[0] + ink[1] + ink[2]) / 3;
  // What covers nothing is paper; what covers all is ink.
  const greys = Uint8Array.from({ length: canvas.width * canvas.height }, (_, at) =>
    Math.round(255 - (data[at * 4 + 3] ?? 0) * (1 - grey)),
  );
  return [{ kind: 'picture', left: box.left, top: box.top, width: box.width, height: box.height, columns: canvas.width, greys }];
}
