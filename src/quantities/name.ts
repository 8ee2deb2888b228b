/** A name for people: the one given, else the id with blanks for hyphens. */
export const nameOf = (id: string, { name }: { readonly name?: string | undefined }): string =>
  name ?? id.replaceAll('-', ' ').replace(/^./, (first) => first.toUpperCase());
