import { describe, expect, it } from 'vitest';
import type { Assignment } from '../../../src/exchange/assignment/assignment';
import { contentId, fnv } from '../../../src/exchange/assignment/content-id';
import { FIRST_ASSIGNMENT } from './stored-assignments';

const FIRST: Assignment = JSON.parse(FIRST_ASSIGNMENT);

describe('The id of an assignment', () => {
  // The test vectors of FNV-1a, 64 bits, by its authors (also in RFC 9923); from memory.
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('is made by FNV-1a: “%s”', (text, hash) => {
    expect(fnv(text)).toBe(hash);
  });

  it('does not hang on the id that it came with, on line ends or on the order of fields', () => {
    const turned = Object.fromEntries(Object.entries(FIRST).reverse()) as unknown as Assignment;
    for (const same of [{ ...FIRST, id: 'other' }, { ...FIRST, text: FIRST.text.replaceAll('\n', '\r\n') }, turned])
      expect(contentId(same)).toBe(contentId(FIRST));
  });

  it('hangs on everything else', () => {
    const changes: readonly { readonly [Name in keyof Assignment]?: Assignment[Name] | undefined }[] = [
      ...[{ title: 'x' }, { text: 'x' }, { note: 'x' }, { direction: '3-2' as const }, { kind: 'rumba' as const }, { level: 4 as const }],
      ...[{ hands: 'left' as const }, { transpose: 3 }, { tempo: 71 }, { goalTempo: 85 }, { loop: null }, { passes: 4 }, { drill: null }],
      ...[{ due: null }, { loop: { fromBar: 0, toBar: 3 } }, { drill: { name: 'at sight', seed: 13 } }],
    ];
    expect(new Set(changes.flatMap(Object.keys))).toEqual(
      new Set(Object.keys(FIRST).filter((name) => !/^(id|contratiempo|version)$/.test(name))),
    );
    const ids = changes.map((change) => contentId({ ...FIRST, ...change } as Assignment));
    expect(new Set([...ids, contentId(FIRST)]).size).toBe(changes.length + 1);
  });
});
