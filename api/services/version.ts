import manifest from '../../package.json' with { type: 'json' };

/** Version of the service, kept with every frozen result. */
export const VERSION: string = manifest.version;
