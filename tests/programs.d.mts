export function findBrowser(): string | undefined;
export function findLibreOffice(): string | undefined;
export function ensureBrowser(): Promise<void>;
export function ensureLibreOffice(): Promise<void>;
export function ensurePoppler(): Promise<void>;
