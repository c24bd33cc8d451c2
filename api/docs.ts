export const docsPage = (_document: unknown): string => '';
