/** A teacher's assignment in a real browser: set, carried as a file to another device, worked on, handed back, read in the table. */
import { type Download, expect, type Page, test } from '@playwright/test';
import { FIRST_ASSIGNMENT, FIRST_RESULTS } from '../exchange/assignment/stored-assignments';
import { expectClean, witness } from './witness';

const section = (page: Page) => page.getByRole('region', { name: 'Teacher and student' });
/** Opens the form for an assignment of the chart that lies open. */
async function beginAssignment(page: Page) {
  const seen = witness(page);
  await page.goto('./#/journal');
  await section(page).getByText('Set an assignment').click();
  return seen;
}
const carried = async (page: Page, save: () => Promise<void>): Promise<{ readonly name: string; readonly path: string }> => {
  const waiting = page.waitForEvent('download');
  await save();
  const download: Download = await waiting;
  return { name: download.suggestedFilename(), path: await download.path() };
};

test('An assignment goes out as a file, is accepted on another device, and its results come back into a table', async ({
  page,
  browser,
}) => {
  const seen = await beginAssignment(page);
  await section(page).getByLabel('Clean passes at the goal').fill('1');
  await section(page).getByLabel('Goal (half notes a minute)').fill('60');
  await section(page).getByLabel('Your words to the student').fill('Sing the clave first. <b>');
  const assignment = await carried(page, () => section(page).getByRole('button', { name: 'Save the assignment' }).click());
  expect(assignment.name).toBe('last-ferry.tarea.json');

  const context = await browser.newContext({ serviceWorkers: 'block', reducedMotion: 'reduce' });
  const student = await context.newPage();
  const seenThere = witness(student);
  await student.goto(page.url());
  const choose = section(student).locator('input[type=file]');
  await choose.setInputFiles({
    name: 'x.tarea.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"contratiempo":"assignment","version":1}'),
  });
  await expect(section(student)).toContainText('x.tarea.json, id: missing, expected a text of 1 to 200 characters.');
  await choose.setInputFiles(assignment.path);
  await expect(section(student)).toContainText('An assignment: Last Ferry');
  await expect(section(student)).toContainText('Sing the clave first. <b>');
  await section(student).getByRole('button', { name: 'Accept it' }).click();
  await expect(section(student)).toContainText('0 of 1 clean at the goal');
  await section(student).getByRole('button', { name: 'Open Last Ferry as it was set' }).click();
  await student.getByRole('button', { name: 'Play along' }).click();
  await student.getByRole('button', { name: 'I rate myself' }).click();
  await student.getByRole('group', { name: 'How was that pass?' }).getByRole('button', { name: 'Clean' }).click();
  await student.getByRole('link', { name: 'Journal' }).click();
  await expect(section(student)).toContainText('1 of 1 clean at the goal');
  await student.reload();
  await expect(section(student)).toContainText('1 of 1 clean at the goal');
  await section(student).getByText('Hand the results back').click();
  await section(student).getByLabel('Your name, if you like').fill('Inés');
  const results = await carried(student, () => section(student).getByRole('button', { name: 'Save the results of Last Ferry' }).click());
  expectClean(seenThere);

  await section(page).locator('input[type=file]').setInputFiles(results.path);
  const row = section(page).getByRole('row', { name: /Inés/ });
  await expect(row).toContainText('100 %');
  await expect(row).toContainText('goal 60');
  await expect(row).toContainText('1 by own ear');
  expectClean(seen);
  // Its downloads go with it.
  await context.close();
});

test('An assignment goes out as a link with a code: shown first on the other device, nothing touched, and gone from the address', async ({
  page,
  browser,
}) => {
  const seen = await beginAssignment(page);
  await section(page).getByLabel('Your words to the student').fill('Sing the clave first.');
  await section(page).getByRole('button', { name: 'Make a link of it' }).click();
  const address = await section(page).getByRole('textbox', { name: 'The link' }).inputValue();
  expect(address).toMatch(/#t=1\.[\w-]+$/);
  await expect(section(page).getByRole('img', { name: /QR code/ })).toBeVisible();
  // What is set on the desk after it was made is in it: it is made anew, and that is said.
  await page.getByRole('button', { name: 'Faster' }).click();
  await expect(section(page)).toContainText('this link was made anew');
  expect(await section(page).getByRole('textbox', { name: 'The link' }).inputValue()).not.toBe(address);
  // What is typed after it was made is not in it: the link goes.
  await section(page).getByLabel('Clean passes at the goal').fill('5');
  await expect(section(page).getByRole('textbox', { name: 'The link' })).toHaveCount(0);
  expectClean(seen);

  const context = await browser.newContext({ serviceWorkers: 'block', reducedMotion: 'reduce' });
  const student = await context.newPage();
  const seenThere = witness(student);
  await student.goto(address);
  await expect(student).toHaveURL(/#\/journal$/);
  await expect(section(student).getByText('An assignment: Last Ferry')).toBeInViewport();
  await expect(section(student)).toContainText('Sing the clave first.');
  await section(student).getByRole('button', { name: 'Leave it' }).click();
  await student.reload();
  await expect(section(student)).toBeVisible();
  await expect(section(student)).not.toContainText('An assignment:');
  await student.goto('about:blank');
  await student.goto(`${address.slice(0, -6)}AAAAAA`);
  await expect(section(student)).toContainText('The assignment in this link cannot be opened. A part of it is missing or changed');
  await student.goto('about:blank');
  await student.goto(address);
  await section(student).getByRole('button', { name: 'Accept it' }).click();
  await expect(section(student)).toContainText('0 of 3 clean at the goal');
  await student.reload();
  await expect(section(student)).toContainText('0 of 3 clean at the goal');
  expectClean(seenThere);
  await context.close();
});

for (const { drill, arrives } of [
  {
    drill: 'The gap',
    arrives: async (page: Page) => {
      await expect(page.getByRole('link', { name: 'Practise' })).toHaveAttribute('aria-current', 'page');
      await expect(page.getByRole('region', { name: 'Drill' })).toContainText('The gap');
    },
  },
  {
    drill: 'Reading at sight',
    arrives: async (page: Page) => {
      await expect(page.getByRole('link', { name: 'Drills' })).toHaveAttribute('aria-current', 'page');
      await expect(page.getByRole('region', { name: 'Reading at sight' }).getByRole('spinbutton')).toHaveValue('42');
      // What was asked for once is not asked for again.
      await page.getByRole('link', { name: 'Practise' }).click();
      await page.getByRole('link', { name: 'Drills' }).click();
      await expect(page.getByRole('heading', { name: 'The gap' })).toBeVisible();
    },
  },
])
  test(`Opening an assignment begins its drill with its number: ${drill}`, async ({ page }) => {
    const seen = await beginAssignment(page);
    await section(page).getByLabel('A drill beside it').selectOption({ label: drill });
    await section(page).getByLabel('Its number, the same for the whole class').fill('42');
    const { path } = await carried(page, () => section(page).getByRole('button', { name: 'Save the assignment' }).click());
    await section(page).locator('input[type=file]').setInputFiles(path);
    await section(page).getByRole('button', { name: 'Accept it' }).click();
    await section(page).getByRole('button', { name: 'Open Last Ferry as it was set' }).click();
    await arrives(page);
    expectClean(seen);
  });

test('An assignment dropped on the Chart place, or brought in on its shelf, is shown in the Journal; another file is one clear fault', async ({
  page,
}) => {
  const seen = witness(page);
  await page.goto('./#/chart');
  const drop = (name: string, text: string) =>
    page.evaluateHandle(
      ([named, held]) => {
        const given = new DataTransfer();
        given.items.add(new File([held], named, { type: 'application/json' }));
        return given;
      },
      [name, text] as const,
    );
  await expect(page.locator('.files-drop input[type=file]')).toBeAttached();
  await page.locator('.files-drop').dispatchEvent('drop', { dataTransfer: await drop('shopping.json', '{"milk": 2}') });
  await expect(page.locator('.intake')).toContainText(
    'shopping.json was not taken in: expected chart text (.txt), a lead sheet (.musicxml, .xml, .mxl) or a file that was saved here (.json): a backup, an assignment or results.',
  );
  await page.locator('.files-drop').dispatchEvent('drop', { dataTransfer: await drop('low-tide.tarea.json', FIRST_ASSIGNMENT) });
  await expect(page).toHaveURL(/#\/journal$/);
  await expect(section(page).getByText('An assignment: Low Tide')).toBeInViewport();
  await section(page).getByRole('button', { name: 'Leave it' }).click();
  await page.goto('./#/chart');
  await page
    .locator('.files-drop input[type=file]')
    .setInputFiles({ name: 'ines.resultado.json', mimeType: 'application/json', buffer: Buffer.from(FIRST_RESULTS) });
  await expect(section(page).getByRole('row', { name: /Inés/ })).toBeInViewport();
  expectClean(seen);
});
