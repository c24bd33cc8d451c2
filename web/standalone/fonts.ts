export interface Face {
  /** As it stands in the style sheet of the file, its font within. */
  readonly css: string;
  readonly bytes: () => Uint8Array;
}

const DATA = /url\(["']?data:[^,]*;base64,([^"')]+)["']?\)/;

/** The fonts that came within the file, regular before semibold. */
export function fontFaces(): Face[] {
  const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
  const faces = rules.filter((rule) => rule instanceof CSSFontFaceRule);
  const weight = (rule: CSSFontFaceRule) => Number(rule.style.getPropertyValue('font-weight'));
  return faces
    .sort((a, b) => weight(a) - weight(b))
    .map(({ cssText }) => ({ css: cssText, bytes: () => bytesOf(DATA.exec(cssText)?.[1]) }));
}

function bytesOf(base64: string | undefined): Uint8Array {
  if (base64 === undefined) throw new Error('the file must hold its fonts; one of them is missing.');
  return Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
}
