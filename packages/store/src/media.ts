const medias: Readonly<Record<string, string>> = {
  csv: 'text/csv',
  json: 'application/json',
  txt: 'text/plain',
  pdf: 'application/pdf',
  png: 'image/png',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  webp: 'image/webp',
  tif: 'image/tiff',
  tiff: 'image/tiff',
  heic: 'image/heic',
};

/** Media type by the end of the name; unknown ends are plain bytes. */
export function mediaOf(path: string): string {
  const end = path.slice(path.lastIndexOf('.') + 1).toLowerCase();
  return (Object.hasOwn(medias, end) && medias[end]) || 'application/octet-stream';
}
