/**
 * The two typefaces of the letter. The letter carries both ("Letter Text" is Literata, "Letter Figures" is
 * Inter); what follows them in the list serves text in scripts that they lack.
 */
export const TEXT_FACE = "'Letter Text',Georgia,'Times New Roman',serif";
export const FIGURE_FACE = "'Letter Figures','Helvetica Neue',Helvetica,Arial,sans-serif";
