import { useLayoutEffect } from 'react';
import { PAPERS, type PaperName } from '../../layout/sheet/paper';

/**
 * Prints on `paper`, without the browser's margins, for as long as the sheet is shown. A sheet made in code: a style element would need a
 * content security policy that lets anyone's styles in.
 */
export function usePageSize(paper: PaperName): void {
  useLayoutEffect(() => {
    const { width, height } = PAPERS[paper];
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`@page { size: ${width}mm ${height}mm; margin: 0; }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
    };
  }, [paper]);
}
