import { screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { BandGroup } from '../../../src/ui/transport/BandGroup';
import { ExerciseGroup } from '../../../src/ui/transport/ExerciseGroup';
import { HandsGroup } from '../../../src/ui/transport/HandsGroup';
import { RhythmPadGroup } from '../../../src/ui/transport/RhythmPadGroup';
import { StatesGroup } from '../../../src/ui/transport/StatesGroup';
import { show } from '../app/show';

const button = (name: string | RegExp) => screen.getByRole('button', { name });

describe('The settings of figure, hands and band', () => {
  it('keep a rhythm that cannot be read in its field and say what was expected; a good one plays', async () => {
    const { user, state } = await show(<RhythmPadGroup />);
    const field = screen.getByLabelText<HTMLInputElement>(/As text/);
    await user.clear(field);
    await user.type(field, 'x.xx.x.x .x.xx.x');
    expect(screen.getByRole('alert').textContent).toContain('found 15 steps');
    expect(field.value).toBe('x.xx.x.x .x.xx.x');
    expect(screen.queryByRole('button', { name: 'Play it through the chart' })).toBeNull();
    await user.type(field, '.');
    expect(screen.queryByRole('alert')).toBeNull();
    await user.click(button('Play it through the chart'));
    expect(state().settings.ownFigure).toEqual({ text: 'x.xx.x.x .x.xx.x.', direction: '2-3' });
    await user.click(button('Back to the level’s figure'));
    expect(state().settings.ownFigure).toBeNull();
    expect(field.value).toBe('x.xx.x.x .x.xx.x.');
  });

  it('say what the figure states, with source and scope, and name the mistake of the exercise', async () => {
    const { user, state } = await show(
      <>
        <StatesGroup />
        <ExerciseGroup />
      </>,
    );
    expect(screen.getByText(/It tells direction, not quality/)).toBeTruthy();
    await user.click(button('crossed on purpose'));
    expect(state().settings.crossed).toBe(true);
    expect(screen.getByText('crossed.')).toBeTruthy();
    expect(document.body.textContent).toContain('This is the wrong side: the struck downbeat lands on the 3-side.');
  });

  it('show changes made by hand only when there are some, with the way back', async () => {
    const { user, state, desk } = await show(<StatesGroup />);
    expect(screen.queryByText('Changes by hand')).toBeNull();
    desk.run({ kind: 'edit', edit: { bar: 0, step: 0, change: 'off' } });
    expect(await screen.findByText('1 change by hand')).toBeTruthy();
    await user.click(button('Undo'));
    expect(state().settings.edits).toEqual([]);
    await user.click(button('Redo'));
    expect(state().settings.edits).toHaveLength(1);
    await user.click(button('Take all back'));
    expect(state().settings.edits).toEqual([]);
  });

  it('choose percussion pattern by pattern, and a style with its usual tempo and evidence', async () => {
    const { user, state } = await show(<BandGroup onBalance={() => undefined} />);
    await user.click(screen.getByRole('radio', { name: 'chosen' }));
    await user.click(button('mambo bell'));
    expect(state().settings.percussion).toEqual(['cascara', 'mambo bell']);
    await user.click(button('cáscara'));
    expect(state().settings.percussion).toEqual(['mambo bell']);
    await user.selectOptions(screen.getByLabelText('Style'), 'guajira');
    // Usual range of guajira: from memory.
    expect(screen.getByText('usually 45 to 65 half notes a minute · tempo from memory')).toBeTruthy();
    await user.click(button('Its usual tempo as the goal: 54 half notes'));
    expect(state().settings).toMatchObject({ style: 'guajira', goalTempo: 54 });
    await user.selectOptions(screen.getByLabelText('Style'), 'as charted: salsa');
    expect(state().settings.style).toBeNull();
  });

  it('take the stretch of the hand and the keys of the instrument', async () => {
    const { user, state } = await show(<HandsGroup />);
    await user.selectOptions(screen.getByLabelText('Stretch of a hand'), 'tenth');
    await user.selectOptions(screen.getByLabelText('Keys of the instrument'), '61 keys');
    await user.selectOptions(screen.getByLabelText('Hands'), 'contrary motion');
    expect(state().settings).toMatchObject({ stretch: 'tenth', compass: 61, hands: 'contrary' });
    expect(state().music?.score.hands).toBe('contrary');
  });

  it('reach the three steps of the solo, each looped with a touch', async () => {
    const { user, state } = await show(<ExerciseGroup />);
    await user.click(screen.getByRole('radio', { name: 'example line' }));
    const steps = screen.getAllByRole('listitem');
    expect(steps.map((step) => step.textContent?.slice(0, 1))).toEqual(['1', '2', '3']);
    await user.click(button(/chords on the clave/));
    const { loop } = state().settings;
    expect(loop && loop.fromBar % 2).toBe(0);
    expect(steps[1]?.textContent).toContain(`bars ${(loop?.fromBar ?? 0) + 1}–${loop?.toBar}`);
    await user.click(button(/chords on the clave/));
    expect(state().settings.loop).toBeNull();
  });
});
