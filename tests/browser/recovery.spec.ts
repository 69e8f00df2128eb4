/** What a person typed outlives the page that it was typed into, whatever the page was doing when it went. */
import { expect, type Page, test } from '@playwright/test';
import { expectClean, witness } from './witness';

const TYPED = 'title: Typed in time\nkey: F\nclave: 2-3 son\n\n[A]\n| Gm7 | C7 | F6 | D7 |\n';
const editor = (page: Page) => page.getByRole('textbox', { name: 'Chart text' });

test('A page that is closed in the middle of a write has lost nothing when it is opened again, and then the database has it too', async ({
  context,
}) => {
  const leaving = await context.newPage();
  await leaving.goto('./#/chart');
  await expect(editor(leaving)).toBeVisible();
  // The database takes the write and never ends it, as when the process is killed under it.
  await leaving.evaluate(() => {
    const nothing = { value: () => undefined };
    const stuck = Object.create(IDBRequest.prototype, {
      addEventListener: nothing,
      removeEventListener: nothing,
    }) as IDBRequest<IDBValidKey>;
    IDBObjectStore.prototype.put = () => stuck;
  });
  await editor(leaving).fill(TYPED);
  await expect.poll(() => leaving.evaluate(() => JSON.stringify(localStorage))).toContain('Typed in time');
  await leaving.close({ runBeforeUnload: false });

  const next = await context.newPage();
  const seen = witness(next);
  await next.goto('./#/chart');
  await expect(editor(next)).toHaveValue(TYPED);
  await editor(next).press('ControlOrMeta+End');
  await editor(next).pressSequentially('; and on');
  await expect(next.getByText('Kept on this device.')).toBeVisible();
  await expect.poll(() => next.evaluate(() => JSON.stringify(localStorage))).not.toContain('Typed in time');
  await next.reload();
  await expect(editor(next)).toHaveValue(`${TYPED}; and on`);
  expectClean(seen);
});

test('A page whose process dies has kept what it said is kept', async ({ context }) => {
  const dying = await context.newPage();
  await dying.goto('./#/chart');
  await editor(dying).fill(TYPED);
  await expect(dying.getByText('Kept on this device.')).toBeVisible();
  const gone = dying.waitForEvent('crash');
  void dying.goto('chrome://crash').catch(() => undefined);
  await gone;
  const next = await context.newPage();
  await next.goto('./#/chart');
  await expect(editor(next)).toHaveValue(TYPED);
});

test('A page that finds the database held by another opens all the same, says so, and keeps what was typed once it is let go', async ({
  context,
}) => {
  const earlier = await context.newPage();
  await earlier.goto('./#/chart');
  await editor(earlier).fill(TYPED);
  await expect(earlier.getByText('Kept on this device.')).toBeVisible();
  await earlier.close();

  // A page of the same origin that runs nothing of ours and never lets its transaction end.
  const holder = await context.newPage();
  await holder.goto('./licences.txt');
  await holder.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open('contratiempo');
        opening.onsuccess = () => {
          const store = opening.result.transaction('records', 'readwrite').objectStore('records');
          const again = (): void => {
            if (!('letGo' in window)) store.get('nothing').onsuccess = again;
          };
          again();
          resolve();
        };
      }),
  );
  const late = await context.newPage();
  const seen = witness(late);
  await late.goto('./#/chart');
  await expect(editor(late)).toBeVisible({ timeout: 8000 });
  await expect(late.getByText('This device has not answered yet')).toBeVisible();
  await expect(editor(late)).not.toHaveValue(TYPED);
  await editor(late).fill(TYPED.replace('in time', 'while it was held'));
  await late.getByText('Not kept yet').scrollIntoViewIfNeeded();
  // Every other place opens too.
  await late.getByRole('link', { name: 'Sheet' }).click();
  await expect(late.locator('.sheet-page').first()).toBeVisible();
  await late.getByRole('link', { name: 'Journal' }).click();
  await expect(late.getByText('Nothing here yet.')).toBeVisible();
  await late.getByRole('link', { name: 'Practise' }).click();
  await expect(late.getByRole('gridcell').first()).toBeVisible();
  await late.getByRole('link', { name: 'Chart' }).click();
  await holder.evaluate(() => Object.assign(window, { letGo: true }));
  await expect(late.getByText('Kept on this device.')).toBeVisible();
  await expect(late.getByText('This device has not answered yet')).toHaveCount(0);
  await expect(editor(late)).toHaveValue(TYPED.replace('in time', 'while it was held'));
  const shelf = late.getByRole('region', { name: 'Your charts' });
  await expect(shelf.getByRole('button', { name: /^Typed in time/ })).toBeVisible();
  await late.reload();
  await expect(editor(late)).toHaveValue(TYPED.replace('in time', 'while it was held'));
  expectClean(seen);
});

test('A page that finds the database changed by a newer version says so, writes nothing over it, and hands out what was made in it', async ({
  context,
}) => {
  const old = await context.newPage();
  const seen = witness(old);
  await old.goto('./#/chart');
  await editor(old).fill(TYPED);
  await expect(old.getByText('Kept on this device.')).toBeVisible();

  // What a newer version would do, while the older one lies open in another tab.
  const newer = await context.newPage();
  await newer.goto('./licences.txt');
  const contents = () =>
    newer.evaluate(
      () =>
        new Promise<string>((resolve, reject) => {
          const opening = indexedDB.open('contratiempo', 2);
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const store = opening.result.transaction('records').objectStore('records');
            const [keys, values] = [store.getAllKeys(), store.getAll()];
            values.onsuccess = () => resolve(JSON.stringify([keys.result, values.result]));
          };
        }),
    );
  const before = await contents();
  await expect(old.getByText('A newer version of this page has written on this device')).toBeVisible();
  await editor(old).fill(TYPED.replace('in time', 'in the older page'));
  await expect(old.getByText('Not kept: a newer version')).toBeVisible();

  await old.getByRole('button', { name: 'Load the page anew' }).click();
  await expect(old.getByText('A newer version of this page has written on this device')).toBeVisible();
  await editor(old).fill(TYPED.replace('in time', 'after that'));
  const download = old.waitForEvent('download');
  await old.locator('.notice').getByRole('button', { name: 'Save a backup' }).click();
  const saved = await (await download).createReadStream();
  let backup = '';
  for await (const chunk of saved) backup += String(chunk);
  expect(backup).toContain('Typed in the older page');
  expect(backup).toContain('Typed after that');
  expect(await contents()).toBe(before);
  expectClean(seen);
});
