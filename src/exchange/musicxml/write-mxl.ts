import { strToU8, zipSync } from 'fflate';
import { MUSICXML_TYPE } from './write-musicxml';
import { element, printXml } from './xml';

/** The type of a compressed file, for saving it; the archive says it too. */
export const MXL_TYPE = 'application/vnd.recordare.musicxml';
/** The score's name inside the archive. */
const ROOT_FILE = 'score.musicxml';
/** The earliest day a zip can hold, so that the same score always gives the same bytes. */
const NO_DATE = new Date(1980, 0, 1);

/**
 * A MusicXML text as a compressed `.mxl` file: first the type, stored as it is, then the container that names the score, then the score.
 * Source: MusicXML 4.0, Compressed .MXL Files.
 */
export function writeMxl(xml: string): Uint8Array {
  const rootFile = element('rootfile', [], { 'full-path': ROOT_FILE, 'media-type': MUSICXML_TYPE });
  const container = printXml(element('container', [element('rootfiles', [rootFile])]));
  return zipSync(
    {
      mimetype: [strToU8(MXL_TYPE), { level: 0 }],
      'META-INF/container.xml': [strToU8(container), { level: 9 }],
      [ROOT_FILE]: [strToU8(xml), { level: 9 }],
    },
    { mtime: NO_DATE },
  );
}
