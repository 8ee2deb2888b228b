/** Findings that the letter lists under a heading: in the open, or in groups that are folded to a line each. */
export interface FindingGroup {
  readonly title: string;
  readonly items: readonly string[];
}

export type FindingList =
  | FindingGroup
  | { readonly title: string; readonly groups: readonly FindingGroup[] };
