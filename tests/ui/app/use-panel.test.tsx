import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useLayoutEffect, useState } from 'react';
import { describe, expect, it } from 'vitest';
import { usePanel } from '../../../src/ui/app/use-panel';

function Panel({ name, onClose }: { readonly name: string; readonly onClose: () => void }) {
  const panel = usePanel(onClose);
  return <section ref={panel} aria-label={name} tabIndex={-1} />;
}

/** Presses Escape as soon as what stands before it is in the page, before anything that waits for the first frame. */
function AtOnce() {
  useLayoutEffect(() => {
    window.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', cancelable: true }));
  }, []);
  return null;
}

/** Two keys, each with a panel; one takes the place of the other. */
function Two() {
  const [open, setOpen] = useState<string | null>(null);
  return (
    <>
      {open !== null && <Panel key={open} name={open} onClose={() => setOpen(null)} />}
      {['tempo', 'more'].map((name) => (
        <button key={name} type="button" onClick={() => setOpen(name)}>
          {name}
        </button>
      ))}
    </>
  );
}

describe('A panel', () => {
  it('closes on an Escape that comes the moment it is in the page', () => {
    let closed = 0;
    render(
      <>
        <Panel
          name="more"
          onClose={() => {
            closed += 1;
          }}
        />
        <AtOnce />
      </>,
    );
    expect(closed).toBe(1);
  });

  it('that takes the place of another keeps the focus, and gives it back to its own key', async () => {
    const user = userEvent.setup();
    render(<Two />);
    await user.click(screen.getByRole('button', { name: 'tempo' }));
    expect(screen.getByRole('region', { name: 'tempo' })).toBe(document.activeElement);
    await user.click(screen.getByRole('button', { name: 'more' }));
    expect(screen.getByRole('region', { name: 'more' })).toBe(document.activeElement);
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('region')).toBeNull();
    expect(screen.getByRole('button', { name: 'more' })).toBe(document.activeElement);
  });
});
