import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';

interface ProxyOptions {
  readonly change?: (path: string, body: string) => string;
  /** The Host that the service is asked by, as a reverse proxy outside would. */
  readonly name?: string;
}

/** Stands before a service: lets a test change the scripts it answers with, and come in by another name. */
export async function proxyOf(
  target: string,
  { change = (_, body) => body, name }: ProxyOptions,
): Promise<{ address: string; close: () => Promise<void> }> {
  const server = createServer((from, to) => {
    const { 'accept-encoding': _, ...headers } = from.headers;
    if (name !== undefined) headers.host = name;
    if (name !== undefined && headers.origin) headers.origin = `https://${name}`;
    const onward = request(new URL(from.url!, target), { method: from.method!, headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () => {
        const { 'content-length': __, 'transfer-encoding': ___, ...rest } = answer.headers;
        const body = Buffer.concat(parts);
        const text = /javascript/.test(rest['content-type'] ?? '')
          ? change(from.url!, body.toString())
          : body;
        to.writeHead(answer.statusCode!, rest).end(text);
      });
    });
    onward.on('error', () => to.destroy());
    from.pipe(onward);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const close = () =>
    new Promise<void>((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, close };
}
