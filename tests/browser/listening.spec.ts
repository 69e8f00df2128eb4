// long because everything here plays through the same keyboard and the same rounds
/** Playing along in a real browser: a keyboard injected, whole rounds played, what the page says about them, and everything that may go wrong with a device. */
import { expect, type Page, test } from '@playwright/test';
import { injectKeyboard } from './fake-keyboard';
import { type Asked, askedFor, heardFrom, normal, slipped, takeOf } from './rounds';
import { commitsDuring, countCommits, expectClean, withoutCountIn, witness } from './witness';

/** Half notes a minute: a loop of two bars lasts two seconds. */
const TEMPO = 120;
const MS_PER_TICK = 60_000 / (TEMPO * 960);
const LOOP_MS = 3840 * MS_PER_TICK;

const row = (page: Page) => page.getByRole('region', { name: 'Play along' });
const report = (page: Page) => page.getByRole('region', { name: 'What happened' });

async function setTempo(page: Page, tempo: number) {
  await page.getByRole('button', { name: 'More' }).click();
  const field = page.getByRole('textbox', { name: 'half notes' });
  await field.fill(String(tempo));
  await field.press('Enter');
  await page.getByRole('button', { name: 'Less', exact: true }).click();
}

async function openMidi(page: Page) {
  await page.goto('./');
  await setTempo(page, TEMPO);
  await page.getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: false }).click();
  await page.getByRole('button', { name: 'Play along' }).click();
  expect(await page.evaluate(() => window.testKeyboard?.asked), 'nothing is asked before a way is chosen').toBe(0);
  await row(page).getByRole('button', { name: 'MIDI keyboard' }).click();
}

type Change = Parameters<typeof takeOf>[3];

/** A round in which the music slipped further against the page's clock than this was not the round that was to be played: it is played again. */
const MOST_SLIP_MS = 15;
const ROUNDS = 4;

/** Plays along for `passes` passes, from a pass that has yet to begin, and stops; the report is open then. */
async function playRound(page: Page, asked: Asked, passes: number, change: Change) {
  const notes = takeOf(asked, MS_PER_TICK, passes, change);
  for (let round = 1; ; round += 1) {
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 20_000 });
    const zero = await heardFrom(page, MS_PER_TICK);
    await page.evaluate(
      async ({ take, from, loop, last }) => {
        const start = from + Math.ceil((performance.now() + 150 - from) / loop) * loop;
        await window.testKeyboard?.play(take, start);
        const over = start + last + 700;
        await new Promise((resolve) => setTimeout(resolve, Math.max(0, over - performance.now())));
      },
      { take: notes, from: zero, loop: LOOP_MS, last: passes * LOOP_MS },
    );
    const slip = slipped(zero, await heardFrom(page, MS_PER_TICK), MS_PER_TICK);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await expect(report(page)).toBeVisible();
    if (slip <= MOST_SLIP_MS) return;
    expect(round, `the machine keeps no time: the music slipped by ${Math.round(slip)} ms`).toBeLessThan(ROUNDS);
    await page.keyboard.press('Escape');
  }
}

const marks = (page: Page) =>
  page.locator('.now-card .verdicts').evaluateAll((panels) => ({
    right: panels.reduce((sum, panel) => sum + panel.querySelectorAll('.verdict-right').length, 0),
    others: panels.flatMap((panel) => [...panel.querySelectorAll<SVGElement>('.verdict')].map(({ dataset }) => dataset.label ?? '')),
  }));

test('A good round is clean, is marked stroke by stroke, and can be heard crossed', async ({ page }) => {
  const seen = witness(page);
  await countCommits(page);
  await injectKeyboard(page);
  await openMidi(page);
  await expect(row(page)).toContainText('Listening to Quay stage keyboard');
  const spread = normal(3);
  await playRound(page, askedFor(), 2, () => ({ offMs: spread() * 6 }));
  await expect(report(page)).toContainText('Clean');
  await expect(row(page)).toContainText(/\d of \d passes clean/);
  const { right, others } = await marks(page);
  expect(right, 'every stroke of two bars has its mark').toBeGreaterThanOrEqual(9);
  expect(others).toEqual([]);

  // The take moved to the other side, heard with the band; Stop ends it and brings the report back.
  await report(page).getByRole('button', { name: 'Hear it on the other side' }).click();
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  await expect(row(page)).toContainText('crossed');
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(report(page)).toBeVisible();
  const handler = await page.evaluate(() => [...(window.testKeyboard?.handlerMs ?? [])].sort((a, b) => a - b));
  expect(handler.length).toBeGreaterThan(30);
  expectClean(seen);
});

test('A round on the other side of the clave is told so once, with a loop', async ({ page }) => {
  await injectKeyboard(page);
  await openMidi(page);
  const asked = askedFor();
  // The same figure a bar late: what struck the 2-side strikes the 3-side.
  await playRound(page, asked, 3, () => ({ offMs: 1920 * MS_PER_TICK }));
  await expect(report(page).getByRole('listitem').first()).toContainText(/side/);
  await expect(report(page).locator('.findings li')).toHaveCount(1);
  // Those bars are looped already: what is offered is the same again, slower, and it plays at one touch.
  await report(page).getByRole('button', { name: 'Again, slower: 96' }).click();
  await expect(page.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  await expect(page.locator('.tempo-open output')).toHaveText('96');
});

test('The arrangement goes to a digital piano in time with what is heard, every note once, and ends with Stop', async ({ page }) => {
  const seen = witness(page);
  await injectKeyboard(page);
  await openMidi(page);
  await row(page).getByText('Device', { exact: true }).click();
  await row(page).getByLabel('Send the piano part to').selectOption({ label: 'Quay stage piano' });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 20_000 });
  const zero = await heardFrom(page, MS_PER_TICK);
  const from = await page.evaluate(() => performance.now());
  await page.waitForTimeout(2.6 * LOOP_MS);
  const to = await page.evaluate(() => performance.now());
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  const sent = await page.evaluate(() => window.testKeyboard?.sent ?? []);
  const strikes = sent.filter(({ bytes }) => bytes[0] === 0x90 && (bytes[2] ?? 0) > 0);

  const { events } = askedFor();
  const expected = Array.from({ length: 40 }, (_, pass) => pass - 20).flatMap((pass) =>
    events.map(({ midi, tick, offsetTicks }) => ({ midi, at: zero + pass * LOOP_MS + (tick + offsetTicks) * MS_PER_TICK })),
  );
  const inside = expected.filter(({ at }) => at >= from + 100 && at < to - 100);
  expect(inside.length).toBeGreaterThan(30);
  const offs = inside.map(({ midi, at }) => {
    const near = strikes.filter(({ bytes, at: when }) => bytes[1] === midi && Math.abs(when - at) < 60);
    expect(near, `MIDI note ${midi} once`).toHaveLength(1);
    return (near[0]?.at ?? 0) - at;
  });
  const middle = [...offs].sort((a, b) => a - b)[offs.length >> 1] ?? 0;
  test
    .info()
    .annotations.push({ type: 'MIDI out', description: `${inside.length} notes, median ${middle.toFixed(1)} ms from what is heard` });
  expect(Math.abs(middle), 'with what is heard').toBeLessThanOrEqual(25);
  expect(Math.max(...offs.map((off) => Math.abs(off - middle))), 'evenly').toBeLessThanOrEqual(MOST_SLIP_MS);
  for (const { bytes, at } of strikes)
    expect(
      sent.some((end) => end.bytes[0] === 0x80 && end.bytes[1] === bytes[1] && end.at > at),
      'every note ends',
    ).toBe(true);
  expect(sent.at(-1)?.bytes, 'All Notes Off, the Channel Mode message 123 (MIDI 1.0)').toEqual([0xb0, 123, 0]);

  // A piano that is unplugged is gone from the list, and nothing more is sent.
  await page.evaluate(() => window.testKeyboard?.unplugPiano());
  await expect(row(page).getByLabel('Send the piano part to')).toHaveCount(0);
  expectClean(seen);
});

/** Two bars on one chord, in the hands of the player: octaves of D, inner notes between them, the last octave early. An invented rhythm. */
const OWN_STEPS = { octave: [0, 3, 7, 11, 15], inner: [2, 5, 9, 13] };
const ownTake = (): Asked => {
  const strike = (step: number, midi: number) =>
    ({ tick: step * 240, offsetTicks: 0, midi, velocity: 88, soundingTicks: 200, firstPassOnly: false, part: 'piano right' }) as never;
  return {
    toTick: 3840,
    events: [
      ...OWN_STEPS.octave.flatMap((step) => [62, 74].map((midi) => strike(step, midi))),
      ...OWN_STEPS.inner.flatMap((step) => [67, 71].map((midi) => strike(step, midi))),
    ],
  };
};

test('A rhythm played in once is read, confirmed on the grid, and carried through every chord of the chart', async ({ page }) => {
  const seen = witness(page);
  await injectKeyboard(page);
  await openMidi(page);
  const spread = normal(7);
  await playRound(page, ownTake(), 1, () => ({ offMs: spread() * 6 }));
  await report(page).getByRole('button', { name: 'Carry my rhythm through the chart' }).click();
  const sheet = page.getByRole('region', { name: 'Your rhythm, as it was heard' });
  await expect(sheet.getByText('The outer line holds one note.')).toBeVisible();
  await sheet.getByRole('button', { name: 'Play it through the chart' }).click();
  await expect(sheet).toHaveCount(0);
  await page.keyboard.press('Escape');
  await page.getByRole('group', { name: 'Loop' }).getByRole('button', { pressed: true }).click();
  // A press is answered before its music is made: the whole form is there a frame later.
  const heard = () =>
    page.evaluate(() => {
      const { desk } = (document.getElementById('page') as unknown as { desk: { desk: { getState(): never } } }).desk as never as {
        desk: { getState(): { music: { score: { parts: { rightHand: { tick: number; midi: number[] }[] } } } } };
      };
      return desk.getState().music.score.parts.rightHand.map(({ tick }) => tick);
    });
  const wanted = [...OWN_STEPS.octave, ...OWN_STEPS.inner].sort((a, b) => a - b);
  const everyCycle = Array.from({ length: 8 }, (_, cycle) => wanted.map((step) => cycle * 3840 + step * 240)).flat();
  await expect.poll(async () => (await heard()).filter((tick) => tick < 8 * 3840)).toEqual(everyCycle);
  // It is what plays.
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 20_000 });
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  expectClean(seen);
});

test('While notes come in, React commits nothing from frame to frame', async ({ page }) => {
  await countCommits(page);
  await injectKeyboard(page);
  await openMidi(page);
  // So slow that no bar ends while we look.
  await setTempo(page, 25);
  await withoutCountIn(page);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('.now-card .panel[data-now]')).toHaveCount(1, { timeout: 20_000 });
  await page.waitForTimeout(1_000);
  await page.evaluate(() => {
    for (let note = 0; note < 30; note += 1) setTimeout(() => window.testKeyboard?.send([0x90, 60 + (note % 12), 80]), note * 90);
  });
  const { commits, frames } = await commitsDuring(page, 2_500);
  expect(frames, 'frames were drawn').toBeGreaterThan(8);
  expect(commits).toBe(0);
  await expect(page.locator('.lamp')).toContainText(/[A-G]/);
});

test('A keyboard that is unplugged in the middle of a take is a sentence, and comes back by itself', async ({ page }) => {
  const seen = witness(page);
  await injectKeyboard(page);
  await openMidi(page);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.evaluate(() => {
    window.testKeyboard?.send([0x90, 60, 90]);
    window.testKeyboard?.unplug();
  });
  await expect(row(page)).toContainText('Quay stage keyboard is gone');
  await expect(row(page).getByRole('button', { name: 'Try again' })).toBeVisible();
  await page.evaluate(() => window.testKeyboard?.plug());
  await expect(row(page)).toContainText('Listening to Quay stage keyboard');
  expectClean(seen);
});

test('MIDI that is refused, missing or without a keyboard says so, and self-rating is always there', async ({ page }) => {
  await page.addInitScript(() =>
    Object.defineProperty(navigator, 'requestMIDIAccess', { value: () => Promise.reject(new DOMException('no', 'NotAllowedError')) }),
  );
  await page.goto('./');
  await page.getByRole('button', { name: 'Play along' }).click();
  await row(page).getByRole('button', { name: 'MIDI keyboard' }).click();
  await expect(row(page)).toContainText('MIDI was not allowed');
  await expect(row(page).getByRole('button', { name: 'Try again' })).toBeVisible();
  await row(page).getByRole('button', { name: 'Another way to play' }).click();
  await row(page).getByRole('button', { name: 'I rate myself' }).click();
  await row(page).getByRole('button', { name: 'Not yet' }).click();
  await expect(row(page)).toContainText('Slower, or one hand');
});

test('Computer keys play notes, leave text fields and the page’s own keys alone, and stop with Close', async ({ page }) => {
  await page.goto('./');
  await page.getByRole('button', { name: 'Play along' }).click();
  await row(page).getByRole('button', { name: 'Computer keys' }).click();
  await expect(row(page)).toContainText('Listening to the computer’s keys');
  await page.keyboard.press('q');
  await expect(page.locator('.lamp')).toContainText('C');
  const level = page.getByRole('region', { name: 'Transport' }).getByRole('group', { name: 'Level' });
  const before = await level.textContent();
  await page.keyboard.press('5');
  expect(await level.textContent(), 'a digit is a note now, not a level').toBe(before);
  const quick = page.getByRole('main').getByRole('textbox').first();
  await quick.click();
  await quick.pressSequentially('Dm7');
  await expect(quick).toHaveValue('Dm7');
  await quick.blur();
  await row(page).getByRole('button', { name: 'Close' }).click();
  await page.keyboard.press('5');
  await expect(level, 'the digit is a level again').not.toHaveText(before ?? '');
});
