export const pagePolicy: string;
export const panePolicy: string;
/** Headers for what is served at that path of the address. */
export function headersFor(path: string): Readonly<Record<string, string>>;
