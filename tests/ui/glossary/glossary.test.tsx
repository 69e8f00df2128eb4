import { act, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { Header } from '../../../src/ui/app/Header';
import { actOnKey } from '../../../src/ui/app/shortcut-keys';
import { askedWord } from '../../../src/ui/glossary/asked-word';
import { Glossary } from '../../../src/ui/glossary/Glossary';
import { FigureGroup } from '../../../src/ui/transport/FigureGroup';
import { speak } from '../../../src/words/speak';
import { show } from '../app/show';

const nothing = (): void => undefined;
const page = () =>
  show(
    <>
      <Header place="practise" open={null} panels={{ balance: nothing, keys: nothing, stand: nothing, view: nothing }} />
      <FigureGroup />
      <Glossary />
    </>,
  );
const glossary = () => screen.findByRole('dialog', { name: 'Words' });

afterEach(async () => {
  act(() => askedWord.setState({ word: null }));
  await speak('en');
});

describe('The glossary', () => {
  it('opens from the header, finds a word as it is typed, and opens it', async () => {
    const { user } = await page();
    await user.click(screen.getByRole('button', { name: 'Words' }));
    const panel = within(await glossary());
    await user.type(panel.getByRole('searchbox', { name: 'Find a word' }), 'ponc');
    expect(panel.getByRole('list', { name: 'All words' }).textContent).toMatch(/^ponche/);
    await user.click(panel.getByRole('button', { name: 'ponche' }));
    expect(panel.getByRole('heading', { level: 3 }).textContent).toBe('ponche');
    expect(panel.getByRole('img', { name: 'bar 1: 4' })).toBeTruthy();
    await user.click(panel.getAllByRole('button', { name: 'bombo' })[0] as HTMLElement);
    expect(panel.getByRole('img', { name: 'bar 1: the & of 2' })).toBeTruthy();
    await user.clear(panel.getByRole('searchbox'));
    await user.type(panel.getByRole('searchbox'), 'xyz');
    expect(panel.getByText('No word here has “xyz” in it.')).toBeTruthy();
  });

  it('opens at the word of a label; Escape closes it and nothing else, and the focus goes back', async () => {
    const { user } = await page();
    const others: string[] = [];
    const listen = (event: KeyboardEvent): void => void others.push(event.key);
    window.addEventListener('keydown', listen);
    const label = screen.getByRole('button', { name: 'Devices' });
    await user.click(label);
    const panel = within(await glossary());
    await waitFor(() => expect(document.activeElement).toBe(panel.getByRole('heading', { name: 'device' })));
    await user.keyboard('{Escape}');
    window.removeEventListener('keydown', listen);
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(others).toEqual([]);
    expect(document.activeElement).toBe(label);
  });

  it('opens and closes with its key', async () => {
    const { desk } = await page();
    const panels = { keys: nothing, balance: nothing, stand: nothing };
    const press = (): boolean => actOnKey(new KeyboardEvent('keydown', { key: 'w' }), desk, panels);
    act(() => expect(press()).toBe(true));
    expect(await glossary()).toBeTruthy();
    act(() => expect(press()).toBe(true));
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  it('speaks Spanish', async () => {
    await speak('es');
    const { user } = await page();
    await user.click(screen.getByRole('button', { name: 'Recursos' }));
    expect((await screen.findByRole('dialog', { name: 'Palabras' })).textContent).toContain('solo octavas');
  });
});
