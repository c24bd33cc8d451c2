import envPaths from 'env-paths';
import { z } from 'zod';

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|::1)$/;
const OWN_NAME = /(^|\.)localhost$|^127\.|^\[/;

/** A secure origin with nothing behind it, and not a name of this machine itself: that would open everything. */
function isOutsideOrigin(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, hostname, pathname, search, hash, username, password } = new URL(address);
  const bare = pathname === '/' && search + hash + username + password === '';
  const name = hostname.replace(/\.$/, '');
  return protocol === 'https:' && bare && !OWN_NAME.test(name);
}

const environment = z
  .object({
    /** 0 takes any free port. */
    PORT: z.coerce.number().int().min(0).max(65_535).default(8470),
    HOST: z.string().min(1).optional(),
    DATABASE_URL: z
      .string()
      .regex(/^postgres(ql)?:\/\//, 'must begin with postgres://')
      .optional(),
    NEARSHERD_DATA: z
      .string()
      .min(1)
      .default(() => envPaths('nearsherd', { suffix: '' }).data),
    /** Origin by which a proxy or tunnel on this machine hands in visitors of shares. */
    NEARSHERD_OUTSIDE: z
      .string()
      .refine(isOutsideOrigin, 'must be https:// and the name visitors use, as in https://shares.example.org')
      .transform((address) => new URL(address).origin)
      .optional(),
    /** Set by the Dockerfile: inside a container the service listens on every address, and Docker publishes it on loopback. */
    NEARSHERD_CONTAINER: z.enum(['0', '1']).default('0'),
  })
  .transform((env) => ({
    ...env,
    HOST: env.HOST ?? (env.NEARSHERD_CONTAINER === '1' ? '0.0.0.0' : '127.0.0.1'),
  }))
  .refine((env) => env.NEARSHERD_CONTAINER === '1' || LOOPBACK.test(env.HOST), {
    path: ['HOST'],
    error:
      'must be a loopback address (127.0.0.1, ::1 or localhost): there are no accounts yet, so whoever reaches the service may do everything',
  });
export type Environment = z.infer<typeof environment>;

/** Reads the environment; an error names the variable and what it must be. Empty variables count as absent. */
export function readEnvironment(variables: NodeJS.ProcessEnv): Environment {
  const given = Object.fromEntries(Object.entries(variables).filter(([, value]) => value !== ''));
  const read = environment.safeParse(given);
  if (read.success) return read.data;
  const lines = read.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`);
  throw new Error(lines.join('\n'));
}
