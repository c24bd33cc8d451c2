/** What every stage's page is given. */
export interface PageProps {
  readonly study: string;
}

export const studyPath = (study: string, rest = '') => `/studies/${study}${rest}`;
