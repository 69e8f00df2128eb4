/** Makes a part of the state when it is first asked for, once; a part that could not be fetched is asked for again. */
export function once<Part>(make: () => Promise<Part>): () => Promise<Part> {
  let made: Promise<Part> | null = null;
  return () => {
    made ??= make().catch((error: unknown) => {
      made = null;
      throw error;
    });
    return made;
  };
}
