import { useCallback, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/**
 * Whether everything must stand on the pages, near the window or not: from the first time that the page is about to be printed, however that was asked for
 * (the browser's `beforeprint`, which anyone may send). `print` brings the rest and opens the print dialogue.
 */
export function usePrint(): { readonly all: boolean; readonly print: () => void } {
  const [all, setAll] = useState(false);
  const bring = useCallback(() => flushSync(() => setAll(true)), []);
  useEffect(() => {
    addEventListener('beforeprint', bring);
    return () => removeEventListener('beforeprint', bring);
  }, [bring]);
  const print = useCallback(() => {
    bring();
    window.print();
  }, [bring]);
  return { all, print };
}
