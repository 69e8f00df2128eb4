/** Score files brought to the shelf of the built page: read in a worker under the page's content policy. */
import { expect, test } from '@playwright/test';
import { writeMusicXml } from '../../src/exchange/musicxml/write-musicxml';
import { writeMxl } from '../../src/exchange/musicxml/write-mxl';
import { DEMO_BOOK } from '../../src/music/chart/demo-book';
import { readChart } from '../../src/music/chart/read';
import { arrange } from '../../src/music/score';
import { LIBRARY_WORDS } from '../../src/words/library';
import { expectClean, witness } from './witness';

function compressedDemo(): Buffer {
  const read = readChart(DEMO_BOOK[4]?.text.replace('Quay Street Parade', 'Borrowed Parade') ?? '');
  if (!read.ok) throw new Error('the demo cannot be read');
  return Buffer.from(writeMxl(writeMusicXml(arrange(read.value))));
}

test('a compressed score becomes a chart, says what was left out, and a damaged one says why', async ({ page }) => {
  const seen = witness(page);
  await page.goto('./#/chart');
  const files = page.locator('input[type="file"]');
  await files.setInputFiles([
    { name: 'parade.mxl', mimeType: 'application/vnd.recordare.musicxml', buffer: compressedDemo() },
    { name: 'damaged.musicxml', mimeType: 'text/xml', buffer: Buffer.from('<score-partwise><part id="P1"><measure>') },
  ]);
  await expect(page.getByText(LIBRARY_WORDS.takenIn('parade.mxl'))).toBeVisible();
  await expect(page.getByText(/notes were left out\./)).toBeVisible();
  await expect(page.getByText(/damaged\.musicxml was not taken in: .*the file ends too early/)).toBeVisible();
  await expect(page.getByText('Borrowed Parade').first()).toBeVisible();
  expectClean(seen);
});
