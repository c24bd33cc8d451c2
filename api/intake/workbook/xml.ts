import { SaxesParser } from 'saxes';
import { RequirementError } from '../../domain/requirement.ts';

export type Attributes = Readonly<Record<string, string>>;

export interface XmlReader {
  readonly open?: (name: string, attributes: Attributes) => void;
  readonly close?: (name: string) => void;
  readonly text?: (text: string) => void;
}

/** Feeds XML to a reader as it comes. Element names lose their prefix. Document types are refused: no entities. */
export async function readXml(pieces: AsyncIterable<string>, reader: XmlReader): Promise<void> {
  const parser = new SaxesParser({ position: false });
  let refused: Error | null = null;
  const refuse = (message: string) => {
    refused ??= new RequirementError(`a workbook must hold well-formed XML; this one does not (${message})`);
  };
  parser.on('error', (error) => refuse(error.message));
  parser.on('doctype', () => refuse('it brings a document type of its own'));
  if (reader.open) {
    const { open } = reader;
    parser.on('opentag', (tag) => open(localName(tag.name), tag.attributes as Attributes));
  }
  if (reader.close) {
    const { close } = reader;
    parser.on('closetag', (tag) => close(localName(tag.name)));
  }
  if (reader.text) parser.on('text', reader.text);
  for await (const piece of pieces) {
    parser.write(piece);
    if (refused) throw refused;
  }
  parser.close();
  if (refused) throw refused;
}

function localName(name: string): string {
  const colon = name.indexOf(':');
  return colon < 0 ? name : name.slice(colon + 1);
}
