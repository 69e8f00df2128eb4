import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Assignment } from '../../../src/exchange/assignment/assignment';
import { makeAssignmentLink, readAssignmentLink } from '../../../src/exchange/assignment/assignment-link';
import { pack } from '../../../src/exchange/link/packed';
import { DEMO_BOOK } from '../../../src/music/chart/demo-book';

const assignment = (text: string, note = ''): Assignment => ({
  ...{ id: 'quay-1', title: 'Slack Water', text, note, direction: '3-2', kind: 'son', level: 2, hands: 'double', transpose: 0 },
  ...{ tempo: 70, goalTempo: 88, loop: { fromBar: 0, toBar: 2 }, passes: 3, drill: { name: 'gap', seed: 41 }, due: '2026-12-05' },
});
const code = (hash: string) => {
  const read = readAssignmentLink(hash);
  return read.ok ? 'ok' : read.faults[0]?.code;
};

describe('An assignment in a link', () => {
  it('comes back as it went, for every chart of the demo book, within 8,192 characters', () => {
    for (const { text } of DEMO_BOOK) {
      const sent = assignment(text, 'Canta la clave primero: “ta · ta”.');
      const link = makeAssignmentLink(sent);
      if (!link.ok) throw new Error(JSON.stringify(link.faults));
      expect(link.value.length).toBeLessThanOrEqual(8192);
      expect(link.value).toMatch(/^#t=1\.[\w-]+$/);
      expect(readAssignmentLink(link.value)).toEqual({ ok: true, value: sent });
    }
  });

  it('is refused with its reason: too long, a bomb, damaged, newer, a chart’s link, results, a field out of range', () => {
    // 5 MB of zeros deflate to some 5 kB (RFC 1951: at most 1032 to 1).
    const bomb = Buffer.concat([Buffer.alloc(4), deflateRawSync(Buffer.alloc(5_000_000), { level: 9 })]).toString('base64url');
    const packed = (text: string): string => {
      const link = pack('#t=', 1, text);
      return link.ok ? link.value : '';
    };
    expect(code(`#t=1.${'A'.repeat(9000)}`)).toBe('too long');
    expect(code(`#t=1.${bomb}`)).toBe('too much inside');
    expect(code('#t=1.AAAA')).toBe('damaged');
    expect(code('#t=2.AAAAAAAA')).toBe('newer version');
    expect(code('#l=1.AAAAAAAA')).toBe('no link');
    expect(code(packed('{"contratiempo":"results","version":1}'))).toBe('field');
    expect(code(packed('[]'))).toBe('another file');
    expect(code(packed(JSON.stringify({ contratiempo: 'assignment', version: 1, ...assignment('', ''), passes: 1000 })))).toBe('field');
    let state = 7;
    const noise = Array.from({ length: 9000 }, () => {
      state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
      return String.fromCharCode(33 + Math.floor((state / 4_294_967_296) * 90));
    }).join('');
    const long = makeAssignmentLink(assignment(noise));
    expect(long.ok ? 'ok' : long.faults[0]?.code).toBe('too long');
  });

  it('never throws, whatever stands there', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(['damaged', 'newer version']).toContain(code(`#t=${text}`));
      }),
    );
    fc.assert(
      fc.property(fc.base64String(), (text) => {
        expect(code(`#t=1.${text.replace(/[+/=]/g, '-')}`)).not.toBe('ok');
      }),
    );
  });
});
