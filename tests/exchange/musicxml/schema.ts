import { spawnSync } from 'node:child_process';

/** The MusicXML 4.0 schema (W3C; musicxml.xsd with local copies of what it imports), named by MUSICXML_SCHEMA; null when it is not here or xmllint is not. */
export function schemaCheck(schema = process.env.MUSICXML_SCHEMA): ((file: string) => string | null) | null {
  const found = spawnSync('xmllint', ['--version'], { encoding: 'utf8' });
  if (schema === undefined || schema === '' || found.status !== 0) return null;
  return (file) => {
    const { status, stderr } = spawnSync('xmllint', ['--nonet', '--noout', '--schema', schema, file], { encoding: 'utf8' });
    return status === 0 ? null : stderr.split('\n').slice(0, 3).join('\n');
  };
}

/** The line to print when the schema cannot be checked. */
export const NO_SCHEMA =
  'not checked against the MusicXML schema: set MUSICXML_SCHEMA to its musicxml.xsd, and install xmllint (Debian: libxml2-utils)';
