import type { Translation } from './language';
import { SCREEN } from './screen';
import { PANTALLA } from './spanish/screen';

/** Every table in Spanish, with music terms as Cuban and Puerto Rican players use them. Fetched only when Spanish is spoken. */
export const SPANISH: readonly Translation[] = [[SCREEN, PANTALLA]];
