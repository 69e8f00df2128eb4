/** A chart handed over in a link: made by a teacher, looked at before anything is taken, and hostile ones refused. */

import { deflateRawSync } from 'node:zlib';
import { expect, type Page, test } from '@playwright/test';
import { expectClean, witness } from './witness';

const editor = (page: Page) => page.getByRole('textbox', { name: 'Chart text' });
const LOW = 'title: <img src=x onerror="window.ran = true">\nkey: D\nclave: 2-3 son\ntempo: half = 92\n\n[A]\n| Em7 | A7 | D6 | B7b9 |\n';

test('A teacher’s link opens on the student’s device, changes nothing until it is taken, and runs no script in its title', async ({
  browser,
}) => {
  const teacher = await browser.newPage();
  const seen = [witness(teacher)];
  await teacher.goto('./#/chart');
  await editor(teacher).fill(LOW);
  await expect(teacher.getByText('No faults')).toBeVisible();
  await teacher.getByRole('button', { name: 'Link for a student' }).click();
  await teacher.getByRole('textbox', { name: 'Your words to the student' }).fill('Slowly, left hand first.');
  const panel = teacher.getByRole('region', { name: 'Link for a student' });
  await panel.getByRole('button', { name: 'Lower goal' }).click();
  await expect(panel).toContainText('D · 2-3 son · Level 2 · standard · half notes 64 a minute, goal 91');
  await expect(teacher.getByRole('img', { name: /QR code/ })).toBeVisible();
  const address = await teacher.getByRole('textbox', { name: 'The link' }).inputValue();
  await teacher.close();

  const student = await (await browser.newContext()).newPage();
  seen.push(witness(student));
  await student.goto(address);
  const dialog = student.getByRole('dialog', { name: 'A chart comes with this link' });
  await expect(dialog).toContainText('Slowly, left hand first.');
  await expect(dialog).toContainText('goal 91');
  await expect(dialog).toContainText('<img src=x onerror="window.ran = true">');
  expect(await student.evaluate(() => 'ran' in window)).toBe(false);
  await dialog.getByRole('button', { name: 'Leave it' }).click();
  await expect(student).toHaveURL(/#\/practise$/);
  await student.getByRole('link', { name: 'Chart' }).click();
  await expect(editor(student)).toHaveValue(/^title: Last Ferry/);
  await expect(student.getByRole('region', { name: 'Your charts' }).getByRole('button', { name: /changed/ })).toHaveCount(0);

  await student.goto('about:blank');
  await student.goto(address);
  await dialog.getByRole('button', { name: 'Put it on my shelf' }).click();
  await student.getByRole('link', { name: 'Chart' }).click();
  await expect(editor(student)).toHaveValue(`; Slowly, left hand first.\n${LOW}`);
  await student.reload();
  await expect(editor(student)).toHaveValue(`; Slowly, left hand first.\n${LOW}`);
  for (const each of seen) expectClean(each);
});

test('A bomb, a megabyte and another version are refused with one sentence, and the page goes on', async ({ page }) => {
  const seen = witness(page);
  const bomb = Buffer.concat([Buffer.alloc(4), deflateRawSync(Buffer.alloc(5_000_000), { level: 9 })]).toString('base64url');
  for (const [hash, words] of [
    [`#l=1.${bomb}`, /unpack to more than/],
    [`#l=1.${'A'.repeat(1_000_000)}`, /characters long/],
    ['#l=7.AAAA', /of version 7/],
    ['#l=1.AAAA', /missing or changed/],
  ] as const) {
    await page.goto('about:blank');
    await page.goto('./');
    await page.evaluate((to) => {
      window.location.hash = to;
    }, hash);
    const dialog = page.getByRole('dialog', { name: 'This link cannot be opened' });
    await expect(dialog).toContainText(words);
    await page.keyboard.press('Escape');
    await expect(dialog).toHaveCount(0);
    await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeEnabled();
  }
  expectClean(seen);
});
