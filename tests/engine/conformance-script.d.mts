export function conformanceScript(): Promise<string>;
