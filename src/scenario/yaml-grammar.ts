/** What the YAML parser complains of, in our own words. */
const GRAMMAR: Readonly<Record<string, { readonly rule: string; readonly remedy: string }>> = {
  TAB_AS_INDENT: { rule: 'is indented by a tab', remedy: 'indent with spaces' },
  MULTIPLE_DOCS: {
    rule: 'begins a second document',
    remedy: 'put only one scenario in a file, without ---',
  },
  BAD_INDENT: {
    rule: 'cannot be read: a bracket is missing, or a line is not indented like those around it',
    remedy: 'check the brackets above, and begin all lines of a group in the same column',
  },
  MISSING_CHAR: {
    rule: 'cannot be read: a bracket, a quote, a comma or a colon is missing',
    remedy: 'check them here and in the line above',
  },
  MULTILINE_IMPLICIT_KEY: {
    rule: 'cannot be read: a colon is missing',
    remedy: 'write a name, a colon, a space and a value',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    rule: 'cannot be read: a line has two colons, or is not indented far enough',
    remedy: 'put text with a colon into quotes, and indent what belongs to a group',
  },
  BAD_DQ_ESCAPE: {
    rule: 'has a backslash that means nothing within double quotes',
    remedy: 'write single quotes, or two backslashes',
  },
  TAG_RESOLVE_FAILED: {
    rule: 'has a tag (a word after !), which means nothing here',
    remedy: 'leave the tag out, or put the text into quotes',
  },
  BAD_SCALAR_START: {
    rule: 'begins with a sign that has a meaning of its own here',
    remedy: 'put the text into quotes',
  },
};

/** The parser's complaint, by its code, as a rule and a remedy. */
export const grammar = (code: string): { readonly rule: string; readonly remedy: string } =>
  GRAMMAR[code] ?? {
    rule: 'cannot be read',
    remedy: 'check brackets, quotes, colons and indentation here',
  };
