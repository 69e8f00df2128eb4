import type { Ink, Mark, PageDrawing, Segment } from '../../layout/sheet/page-drawing';
import { GlyphFonts, outlineText } from './glyph-fonts';
import type { OutlineFont, OutlineGlyph } from './outline-font';
import { PdfObjects, pdfNumber, textString } from './pdf-objects';

/** The type of the file, for saving it. */
export const PDF_TYPE = 'application/pdf';

/** Fitting a word to its place never changes it by more than this. */
const MOST_FITTING = 0.08;

/**
 * Pages as a PDF file, with the glyphs that they use. A character that none of the named fonts has is left out.
 * Pure: the same pages give the same bytes. Source: ISO 32000-1:2008.
 */
export function writePdf(pages: readonly PageDrawing[], fonts: ReadonlyMap<string, OutlineFont>, title: string): Uint8Array<ArrayBuffer> {
  const objects = new PdfObjects();
  const glyphs = new GlyphFonts();
  const pictures: number[] = [];
  const tree = objects.reserve();
  const resources = objects.reserve();
  const leaves = pages.map(({ width, height, marks }) => {
    const content = objects.stream(
      marks
        .map((mark) => (mark.kind === 'picture' ? pictureText(mark, height, objects, pictures) : markText(mark, height, fonts, glyphs)))
        .join(''),
    );
    const box = `[0 0 ${pdfNumber(width)} ${pdfNumber(height)}]`;
    return objects.add(`<< /Type /Page /Parent ${tree} 0 R /MediaBox ${box} /Resources ${resources} 0 R /Contents ${content} 0 R >>`);
  });
  const shown = pictures.map((number, index) => `/P${index} ${number} 0 R`).join(' ');
  objects.add(`<< /Font << ${glyphs.write(objects)} >> /XObject << ${shown} >> >>`, resources);
  objects.add(`<< /Type /Pages /Count ${leaves.length} /Kids [${leaves.map((leaf) => `${leaf} 0 R`).join(' ')}] >>`, tree);
  const root = objects.add(`<< /Type /Catalog /Pages ${tree} 0 R /ViewerPreferences << /DisplayDocTitle true >> >>`);
  const info = objects.add(`<< /Title ${textString(title)} /Creator (Contratiempo) >>`);
  return objects.file(root, info);
}

function pictureText(mark: Extract<Mark, { kind: 'picture' }>, height: number, objects: PdfObjects, pictures: number[]): string {
  const rows = mark.greys.length / mark.columns;
  const entries = `/Type /XObject /Subtype /Image /Width ${mark.columns} /Height ${rows} /ColorSpace /DeviceGray /BitsPerComponent 8`;
  const name = `/P${pictures.push(objects.stream(mark.greys, entries)) - 1}`;
  const place = [mark.width, 0, 0, mark.height, mark.left, height - mark.top - mark.height].map(pdfNumber).join(' ');
  return `q ${place} cm ${name} Do Q\n`;
}

function markText(
  mark: Exclude<Mark, { kind: 'picture' }>,
  height: number,
  fonts: ReadonlyMap<string, OutlineFont>,
  glyphs: GlyphFonts,
): string {
  const ink = inkText(mark.ink);
  if (mark.kind === 'text') return textMark(mark, height, fonts, glyphs, ink);
  const path = outlineText(mark.path.map((segment) => upright(segment, height)));
  if (mark.kind === 'fill') return `${ink} rg\n${path}f\n`;
  return `${ink} RG ${pdfNumber(mark.width)} w [${mark.dash.map(pdfNumber).join(' ')}] 0 d\n${path}S\n`;
}

interface Run {
  readonly font: OutlineFont;
  readonly letters: { readonly char: string; readonly glyph: OutlineGlyph }[];
}

function textMark(
  mark: Extract<Mark, { kind: 'text' }>,
  height: number,
  fonts: ReadonlyMap<string, OutlineFont>,
  glyphs: GlyphFonts,
  ink: string,
): string {
  const runs = runsOf(
    mark.text,
    mark.fonts.flatMap((name) => fonts.get(name) ?? []),
  );
  const widthOf = ({ font, letters }: Run): number =>
    letters.reduce((sum, { glyph }) => sum + (glyph.advance / font.unitsPerEm) * mark.size, 0);
  const natural = runs.reduce((sum, run) => sum + widthOf(run), 0);
  const wanted = mark.width === null || natural === 0 ? 1 : mark.width / natural;
  const fitting = Math.abs(wanted - 1) <= MOST_FITTING ? wanted : 1;
  let x = mark.x;
  return runs
    .map((run) => {
      const baseline = height - baselineOf(mark, run.font);
      const codes = run.letters.map(({ char, glyph }) => glyphs.codeOf(run.font, char, glyph));
      const start = x;
      x += widthOf(run) * fitting;
      return shown(codes, mark.size, fitting, start, baseline, ink);
    })
    .join('');
}

function shown(
  codes: readonly { resource: string; code: number }[],
  size: number,
  fitting: number,
  x: number,
  y: number,
  ink: string,
): string {
  // Glyphs beyond a font's 256 codes lie in another resource, so a run may change it on the way.
  const parts: string[] = [];
  let resource = '';
  for (const { resource: next, code } of codes) {
    if (next !== resource) parts.push(`${resource === '' ? '' : '> Tj '}/${next} ${pdfNumber(size)} Tf <`);
    resource = next;
    parts.push(code.toString(16).padStart(2, '0'));
  }
  return codes.length === 0
    ? ''
    : `BT ${ink} rg ${pdfNumber(fitting * 100)} Tz ${pdfNumber(x)} ${pdfNumber(y)} Td ${parts.join('')}> Tj ET\n`;
}

function baselineOf({ at, size }: Extract<Mark, { kind: 'text' }>, { ascender, descender, unitsPerEm }: OutlineFont): number {
  if ('baseline' in at) return at.baseline;
  const line = ((ascender - descender) / unitsPerEm) * size;
  return at.top + (at.height - line) / 2 + (ascender / unitsPerEm) * size;
}

/** Letters in runs of one font each; a character that no font has is left out. */
function runsOf(text: string, fonts: readonly OutlineFont[]): Run[] {
  const runs: Run[] = [];
  for (const char of text) {
    for (const font of fonts) {
      const glyph = font.glyph(char);
      if (glyph === null) continue;
      const last = runs.at(-1);
      if (last?.font === font) last.letters.push({ char, glyph });
      else runs.push({ font, letters: [{ char, glyph }] });
      break;
    }
  }
  return runs;
}

/** The page counts downwards, the file upwards. */
function upright(segment: Segment, height: number): Segment {
  switch (segment[0]) {
    case 'Z':
      return segment;
    case 'C':
      return ['C', segment[1], height - segment[2], segment[3], height - segment[4], segment[5], height - segment[6]];
    default:
      return [segment[0], segment[1], height - segment[2]];
  }
}

const inkText = (ink: Ink): string => ink.map(pdfNumber).join(' ');
