export function textOfBytes(bytes: Uint8Array): string;
