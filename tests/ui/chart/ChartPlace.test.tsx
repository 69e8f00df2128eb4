import { act, fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { ChartPlace } from '../../../src/ui/chart/ChartPlace';
import { chartText, DeviceStorage, deskBench } from '../../state/desk-fixture';
import { show } from '../app/show';

const field = () => screen.getByRole('textbox', { name: 'Chart text' }) as HTMLTextAreaElement;
const type = (text: string) => fireEvent.change(field(), { target: { value: text } });
const GOOD = chartText('Low Tide');

describe('The Chart place', () => {
  it('draws the bars as they sound while typing, each with its side', async () => {
    await show(<ChartPlace />);
    type(GOOD);
    const bars = within(screen.getByRole('region', { name: 'As it sounds' })).getAllByRole('button');
    expect(bars.map((bar) => bar.querySelector('.visually-hidden')?.textContent).slice(0, 3)).toEqual([
      'bar 1, 2-side, Em7',
      'bar 2, 3-side, A7',
      'bar 3, 2-side, D6',
    ]);
  });

  it('says in counts what the whole band strikes in a bar', async () => {
    await show(<ChartPlace />);
    type(GOOD.replace('A7', 'A7 {1 2& 4}'));
    const bar = screen.getByRole('button', { name: 'bar 2, 3-side, A7, hits 1 2& 4' });
    expect(bar.querySelector('.bar-hits')?.textContent).toBe('hits 1 2& 4');
  });

  it('leads to what lies further down, and the focus goes along', async () => {
    const { user } = await show(<ChartPlace />);
    await user.click(await screen.findByRole('button', { name: 'Demo book' }));
    expect(document.activeElement).toBe(screen.getByRole('heading', { name: 'Demo book' }));
  });

  it('flags an odd section, and one that comes back on the other side', async () => {
    await show(<ChartPlace />);
    type(`${GOOD.replace('| % |', '|')}form: A, B, A\n`);
    expect(screen.getAllByText('odd: the clave turns over').length).toBeGreaterThan(0);
    expect(screen.getAllByText('comes back on the 3-side').length).toBeGreaterThan(0);
  });

  it('lists every fault with line, column, text and expectation, and keeps the text and the last good bars', async () => {
    await show(<ChartPlace />);
    type(GOOD);
    type(`${GOOD}| H7 | Em7 A7 D6 G7 C |\n`);
    const faults = screen.getAllByRole('listitem').filter((item) => item.className === 'fault');
    expect(faults).toHaveLength(2);
    expect(faults[0]?.textContent).toMatch(/^Line 10, column 3H7 expected .+Write B7$/);
    expect(field().value).toContain('H7');
    expect(field().getAttribute('aria-invalid')).toBe('true');
    expect(screen.getByRole('button', { name: 'bar 1, 2-side, Em7' })).toBeTruthy();
  });

  it('marks a fault in the text and mends it with one press', async () => {
    const { user } = await show(<ChartPlace />);
    type(`${GOOD}| H7 | C7 |\n`);
    await user.click(screen.getByRole('button', { name: 'Line 10, column 3' }));
    expect(field().value.slice(field().selectionStart, field().selectionEnd)).toBe('H7');
    await user.click(within(screen.getByRole('region', { name: '1 fault' })).getByRole('button', { name: 'Write B7' }));
    expect(field().value).toBe(`${GOOD}| B7 | C7 |\n`);
    expect(screen.getByText('No faults. This is what plays.')).toBeTruthy();
  });

  it.each([
    ['nothing', ''],
    ['binary', '\u0000\u0001\u0002PK\u0003\u0004\uFFFD\uFFFD'],
    ['unbalanced repeats', '[A]\n| C :| G7 |: C |\n'],
    ['a form that names no section', '[A]\n| C | G7 |\nform: A, Z\n'],
    ['a bare tempo', 'tempo: 92\n[A]\n| C | G7 |\n'],
    ['tempo 0', 'tempo: half = 0\n[A]\n| C | G7 |\n'],
    ['tempo 9999', 'tempo: half = 9999\n[A]\n| C | G7 |\n'],
    ['a tempo in words', 'tempo: fast\n[A]\n| C | G7 |\n'],
  ])('answers %s with a fault, keeps the text and goes on', async (_, text) => {
    const { state } = await show(<ChartPlace />);
    type(GOOD);
    const before = state().music;
    type(text);
    expect(state().text).toBe(text);
    expect(state().faults.length).toBeGreaterThan(0);
    expect(state().music).toBe(before);
    expect(field().value).toBe(text.replaceAll('\r', ''));
  });

  it('shows a title with markup as the text it is', async () => {
    const { page } = await show(<ChartPlace />);
    type(GOOD.replace('Low Tide', '<img src=x onerror=alert(1)>'));
    expect(page.container.querySelector('img')).toBeNull();
    expect(screen.getByText('<img src=x onerror=alert(1)>')).toBeTruthy();
  });

  it('offers the demo book with what each chart teaches, and keeps typed text when one is opened', async () => {
    const { user, settle, state, desk } = await show(<ChartPlace />);
    expect(desk.demos).toHaveLength(6);
    type(GOOD);
    await act(settle);
    const second = desk.demos[1];
    await user.click(screen.getByText(second?.title ?? ''));
    await act(settle);
    expect(state().chartId).toBe(second?.id);
    await user.click(screen.getByRole('button', { name: /^Low Tide/ }));
    await act(settle);
    expect(field().value).toBe(GOOD);
  });

  it('begins a new chart that can be played, on the player’s own shelf', async () => {
    const { user, state } = await show(<ChartPlace />);
    await user.click(screen.getByRole('button', { name: 'New chart' }));
    expect(state().music?.score.title).toBe('New chart');
    expect(state().shelf.map(({ title }) => title)).toEqual(['New chart']);
  });

  it('says in one sentence when the device does not keep the text', async () => {
    const device = new DeviceStorage();
    device.refuses = () => true;
    const { settle } = await show(<ChartPlace />, deskBench({ device }));
    type(GOOD);
    await act(settle);
    expect(screen.getByRole('alert').textContent).toMatch(/^Not kept on this device: the storage of this device is full\./);
    expect(field().value).toBe(GOOD);
  });

  it('starts at a bar that is touched', async () => {
    const { user, desk } = await show(<ChartPlace />);
    type(GOOD);
    await user.click(screen.getByRole('button', { name: 'bar 3, 2-side, D6' }));
    expect(desk.playing.getState().startBar).toBe(2);
  });

  it('writes a chord that could be meant, at the caret, and takes it back', async () => {
    const { user, state } = await show(<ChartPlace />);
    type(`${GOOD}| Em`);
    field().setSelectionRange(GOOD.length + 4, GOOD.length + 4);
    fireEvent.select(field());
    const row = screen.getByRole('toolbar', { name: 'At the caret' });
    await user.click(within(row).getByRole('button', { name: 'Write Em7' }));
    expect(state().text).toBe(`${GOOD}| Em7`);
    expect(field().selectionStart).toBe(GOOD.length + 5);
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    expect(state().text).toBe(`${GOOD}| Em`);
    await user.click(screen.getByRole('button', { name: 'Redo' }));
    expect(state().text).toBe(`${GOOD}| Em7`);
  });

  it('writes the signs of the key row where the caret stands, and brackets around what is selected', async () => {
    const { user, state } = await show(<ChartPlace />);
    type('| D A |');
    const press = async (name: string, from: number, to = from) => {
      field().setSelectionRange(from, to);
      await user.click(screen.getByRole('button', { name }));
    };
    await press('♭ flat', 3);
    await press('| barline', 5);
    expect(state().text).toBe('| D♭ | A |');
    type('Coro');
    await press('[ ] section head', 0, 4);
    expect(state().text).toBe('[Coro]');
    expect(field().selectionStart).toBe(5);
    type('| D 1 2& |');
    await press('{ } hits of the band', 4, 8);
    expect(state().text).toBe('| D {1 2&} |');
  });

  it('stands in the order in which its steps name it', async () => {
    await show(<ChartPlace />);
    const steps = within(await screen.findByRole('navigation', { name: 'Further down' })).getAllByRole('button');
    const names = steps.map((step) => step.textContent);
    const headings = screen.getAllByRole('heading', { level: 2 }).map((heading) => heading.textContent);
    expect(headings.filter((heading) => names.includes(heading))).toEqual(names);
  });

  it('writes the chart in another key and back, comments and lines untouched', async () => {
    const { user, state } = await show(<ChartPlace />);
    const text = GOOD.replace('[A]', '; ours\n[A]');
    type(text);
    await user.click(await screen.findByRole('button', { name: '+½, a half step higher' }));
    expect(state().text).toContain('key: Eb');
    expect(state().text).toContain('; ours\n[A]\n| Fm7 | Bb7 | Eb6 | C7 |');
    await user.click(await screen.findByRole('button', { name: 'Undo' }));
    expect(state().text).toBe(text);
  });
});
