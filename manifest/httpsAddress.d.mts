export declare function httpsAddress(text: string): string | undefined;
