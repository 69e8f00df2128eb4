declare module 'qrcode' {
  /** A code as a square of modules, row by row; 1 is dark. */
  export interface Code {
    readonly modules: { readonly size: number; readonly data: Uint8Array };
  }
  export function create(text: string, options: { readonly errorCorrectionLevel: 'L' | 'M' | 'Q' | 'H' }): Code;
}
