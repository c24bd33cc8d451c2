declare module 'datapackage' {
  export interface Resource {
    readonly name: string;
    readonly tabular: boolean;
    read(options: { keyed?: boolean; relations?: boolean }): Promise<Record<string, unknown>[]>;
  }
  export class Package {
    static load(descriptor: string, options?: { basePath?: string; strict?: boolean }): Promise<Package>;
    readonly valid: boolean;
    readonly errors: readonly Error[];
    readonly resources: readonly Resource[];
  }
}
