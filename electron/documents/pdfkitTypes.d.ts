/** What pdfkit can do and its published types leave out. */
declare namespace PDFKit.Mixins {
  interface StructureElementOptions {
    bbox?: [number, number, number, number];
    scope?: 'Column' | 'Row' | 'Both';
  }
  interface PDFAttachmentOptions {
    /** How the file belongs to the document (ISO 19005-3, AFRelationship). */
    relationship?: 'Source' | 'Data' | 'Supplement' | 'Alternative' | 'Unspecified';
  }
  /** A picture that has been read and may be drawn several times, while its bytes are in the file once. */
  interface OpenedImage {
    readonly width: number;
    readonly height: number;
  }
  interface PDFImage {
    openImage(src: Buffer): OpenedImage;
    image(src: OpenedImage, x: number, y: number, options?: ImageOption): this;
  }
  interface PDFFont {
    /** A font that has been read already: reading one costs more than drawing ten packets. */
    registerFont(name: string, src: import('fontkit').Font): this;
  }
}
declare namespace PDFKit {
  interface DocumentInfo {
    /** A key of one's own: the place of the file's digest. */
    LightoffFileSha256?: string;
  }
}
