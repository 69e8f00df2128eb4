import { spokenLanguage } from '../../words/speak';
import { TAKE_ALONG_WORDS } from '../../words/take-along';
import type { PackFile, PackOrder } from './pack-order';

/** The page that says what is in a pack, as HTML that any browser shows from the folder: every file, by key, with a link. */
export function contentsPage(order: PackOrder, files: readonly PackFile[]): string {
  const words = TAKE_ALONG_WORDS.contents;
  const [first] = order.scores;
  const title = escaped(words.title(first?.title ?? ''));
  const keys = order.scores.map((score, key) => {
    const rows = files
      .filter((file) => file.key === key)
      .map((file) => `<tr><td><a href="${linkTo(file.name)}">${escaped(file.name)}</a></td><td>${escaped(whatIs(file))}</td></tr>`);
    return `<h2>${escaped(words.key(score.key))}</h2>\n<table><tr><th>${words.file}</th><th>${words.what}</th></tr>\n${rows.join('\n')}\n</table>`;
  });
  const about = first === undefined ? '' : `<p>${escaped(words.about(first.clave, order.tempi.join(', ')))}</p>\n`;
  const sounds = order.kinds.includes('wav') ? `<p>${escaped(order.form === 'loop' ? words.loop : words.once)}</p>\n` : '';
  return `<!doctype html>
<html lang="${spokenLanguage()}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title>
<style>body{font:1.06rem/1.5 sans-serif;max-width:60rem;margin:2rem auto;padding:0 1rem}table{border-collapse:collapse}td,th{text-align:left;padding:.2rem 1.2rem .2rem 0;border-bottom:1px solid #ccc}</style></head>
<body>
<h1>${title}</h1>
${about}${sounds}${keys.join('\n')}
<p>${escaped(words.caution)}</p>
</body>
</html>
`;
}

function whatIs({ kind, tempo, playAlong }: PackFile): string {
  const words = TAKE_ALONG_WORDS.contents;
  if (kind === 'wav') return words.wav(playAlong ?? 'full', tempo);
  return kind === 'midi' ? words.midi(tempo) : words[kind];
}

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);
const linkTo = (name: string): string => escaped(name.split('/').map(encodeURIComponent).join('/'));
