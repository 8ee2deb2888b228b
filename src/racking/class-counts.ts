/**
 * Pieces that an open rack takes, by vessel and rack, for the classes of the catalogue: searching for them is a tenth of a
 * short run. None in the sources; the build works them out by the same search (`cli/build.mjs`).
 */
export const classCounts: Readonly<Record<string, number>> = {};
