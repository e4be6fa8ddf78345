type WithMetadata = { info: Record<string, unknown>; endMetadata: () => void };

/**
 * pdfkit 0.20 writes titles and names into the XMP packet as they are, so that `&` or `<` in one breaks the packet.
 * Escapes them for the packet alone; the Info dictionary keeps the raw text, and the two agree again.
 */
export function escapeMetadata(doc: PDFKit.PDFDocument): void {
  const held = doc as unknown as WithMetadata;
  const end = held.endMetadata.bind(held);
  held.endMetadata = () => {
    const raw = { ...held.info };
    for (const [name, value] of Object.entries(raw)) {
      if (typeof value === 'string' || value instanceof String) held.info[name] = new String(escapeXml(String(value)));
    }
    end();
    Object.assign(held.info, raw);
  };
}

const escapeXml = (text: string) => text.replaceAll('&', '&#38;').replaceAll('<', '&#60;').replaceAll('>', '&#62;');
