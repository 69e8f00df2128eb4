/** The longest chart text that is read, in UTF-16 units. */
export const MAX_TEXT_LENGTH = 262_144;
/** The longest chart, in bars as they sound with every open vamp held once. */
export const MAX_SOUNDING_BARS = 4_000;
/** The most times a section or a repeat is played. */
export const MAX_TIMES = 99;
/** The most bars of one `rest`. */
export const MAX_REST_BARS = 999;
/** The longest chord symbol, in UTF-16 units. */
export const MAX_SYMBOL_LENGTH = 64;
/** The most faults that are listed; a last one then says that there are more. */
export const MAX_FAULTS = 500;
