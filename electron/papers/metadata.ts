/**
 * pdfkit 0.20 writes titles and names into the XMP packet as they are, so that `&` or `<` in one breaks the packet.
 * Escapes them for the packet alone; the Info dictionary keeps the raw text, and the two agree again.
 */
export function escapeMetadata(doc: PDFKit.PDFDocument): void {
  const end = doc.endMetadata.bind(doc);
  doc.endMetadata = () => {
    const raw = { ...doc.info };
    for (const [name, value] of Object.entries(raw)) {
      if (typeof value === 'string' || value instanceof String)
        Object.assign(doc.info, { [name]: new String(escapeXml(String(value))) });
    }
    end();
    Object.assign(doc.info, raw);
  };
}

const escapeXml = (text: string) => text.replaceAll('&', '&#38;').replaceAll('<', '&#60;').replaceAll('>', '&#62;');
