import type { Heading } from '../../layout/sheet/sheet-blocks';
import { type Clave, oppositeDirection } from '../../vocabulary';
import { SHEET_WORDS } from '../../words/sheet';

/** What stands over a part of the sheet. */
export function SheetHeading({ heading, clave }: { readonly heading: Heading; readonly clave: Clave }) {
  const flipped: Clave = { ...clave, direction: oppositeDirection(clave.direction) };
  const [name, hint] =
    heading.of === 'level'
      ? SHEET_WORDS.levelHeading(heading.level)
      : heading.of === 'other'
        ? SHEET_WORDS.otherHeading(flipped)
        : SHEET_WORDS.headings[heading.of];
  return (
    <div className="sheet-heading">
      <h3>
        {name} {hint !== '' && <span className="sheet-hint">{hint}</span>}
      </h3>
    </div>
  );
}
