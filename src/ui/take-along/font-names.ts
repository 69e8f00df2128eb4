/*
 * Fonts of the printed pages by the names that files use: family and weight. The page's own family is a font of all weights, of
 * which a file takes the nearest that lies ready.
 */

/** Weights of the text family that lie ready. */
const TEXT_WEIGHTS = [400, 500, 700, 800] as const;

/** Names of the fonts for a computed family list and weight, best first; the text family always comes last, for what others lack. */
export function fontNames(families: string, weight: string): string[] {
  const heavy = Number(weight) || 400;
  const nearest = TEXT_WEIGHTS.reduce<number>((best, known) => (Math.abs(known - heavy) <= Math.abs(best - heavy) ? known : best), 400);
  const text = [`text ${nearest}`, `text ${nearest} more`];
  const named = families.split(',').flatMap((family) => {
    const name = family.trim().replace(/^["']|["']$/g, '');
    if (name.startsWith('Bravura')) return ['music'];
    if (name.startsWith('Academico')) return [heavy >= 600 ? 'serif bold' : 'serif'];
    return name.startsWith('Atkinson') ? text : [];
  });
  return [...new Set([...named, ...text, 'serif', 'music'])];
}
