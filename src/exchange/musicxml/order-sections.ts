import type { Section } from '../../music/chart/chart';
import type { NotTaken } from '../../words/import-screen';

/**
 * Sections as a chart holds them: each name once. A section that comes back with the same bars stands once, and the form line tells the order;
 * one that comes back under the same name with other bars gets a number. With jumps the sections stay where they are, so that signs keep their places.
 */
export function orderSections(sections: readonly Section[]): {
  readonly sections: readonly Section[];
  readonly form: readonly string[] | null;
  readonly notTaken: readonly NotTaken[];
} {
  const notTaken: NotTaken[] = [];
  const kept: Section[] = [];
  const form: string[] = [];
  const jumps = sections.some(({ bars }) => bars.some(({ marks }) => marks.length > 0));
  let bar = 1;
  for (const section of sections) {
    const same = kept.find((one) => baseName(one.name) === baseName(section.name) && contentOf(one) === contentOf(section));
    // A first bar that holds or repeats what stood before it would mean something else after another section.
    if (same && !jumps && !leans(section)) form.push(same.name);
    else {
      const name = freeName(section.name, kept);
      if (name !== section.name) notTaken.push({ code: 'same mark', bar, detail: { mark: section.name, name } });
      kept.push({ ...section, name });
      form.push(name);
    }
    bar += section.bars.length;
  }
  if (kept.length === sections.length) return { sections: kept, form: null, notTaken };
  return { sections: kept, form, notTaken: [...notTaken, { code: 'form order', bar: null, detail: {} }] };
}

const baseName = (name: string): string => name.replace(/ \d+$/, '').toLowerCase();
const leans = ({ bars }: Section): boolean => /^(\/|%)/.test(bars[0]?.source ?? '');

function contentOf({ key, tempo, bars }: Section): string {
  // The last bar's double line is a matter of what follows.
  return JSON.stringify([key, tempo, bars.map((bar, index) => ({ ...bar, doubleBar: bar.doubleBar && index < bars.length - 1 }))]);
}

function freeName(name: string, taken: readonly Section[]): string {
  const names = new Set(taken.map((section) => section.name.toLowerCase()));
  if (!names.has(name.toLowerCase())) return name;
  let number = 2;
  while (names.has(`${name} ${number}`.toLowerCase())) number += 1;
  return `${name} ${number}`;
}
