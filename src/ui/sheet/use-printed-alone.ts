import { useState } from 'react';
import { flushSync } from 'react-dom';

/** Whether a part of the page is being printed by itself, for its class `printed-alone`, and the act that prints it so. */
export function usePrintedAlone(): readonly [printing: boolean, print: () => void] {
  const [printing, setPrinting] = useState(false);
  const print = (): void => {
    flushSync(() => setPrinting(true));
    addEventListener('afterprint', () => setPrinting(false), { once: true });
    window.print();
  };
  return [printing, print];
}
