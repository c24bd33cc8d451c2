import { RequirementError } from '../../domain/requirement.ts';

/** Reads numbers out of a file, and refuses to read beyond its end: a file that ends too early was cut off. */
export function reader(bytes: Uint8Array) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const within = <Value>(read: () => Value): Value => {
    try {
      return read();
    } catch (error) {
      throw error instanceof RangeError ? cutOff(bytes) : error;
    }
  };
  return {
    byte: (at: number) => within(() => view.getUint8(at)),
    big16: (at: number) => within(() => view.getUint16(at)),
    big32: (at: number) => within(() => view.getUint32(at)),
    little32: (at: number) => within(() => view.getUint32(at, true)),
    name: (at: number) =>
      within(() => String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)))),
    part: (from: number, to: number) => {
      if (to > bytes.length) throw cutOff(bytes);
      return bytes.subarray(from, to);
    },
  };
}

export const NO_LIGHT = 'a picture needs pixels; this file has a heading and none';
export const cutOff = (bytes: Uint8Array) =>
  new RequirementError(`a picture needs to be whole; this file breaks off after ${bytes.length} bytes`);

export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
