/**
 * Why a path may not stand in a package, or null where it may. A package holds plain relative paths with forward
 * slashes, so that it means the same on every machine and never reaches outside its own folder.
 */
export function pathFault(path: string): string | null {
  if (path === '') return 'the path is empty';
  if (/^[a-z][a-z0-9+.-]+:\/\//i.test(path)) return 'is an address; the file must be in the package itself';
  if (/^[a-z]:/i.test(path)) return 'begins with a drive letter; write a path inside the package';
  if (path.includes('\\')) return 'holds a backslash; write forward slashes';
  if (path.startsWith('/')) return 'is an absolute path; write a path inside the package';
  if (hasControlCharacter(path)) return 'holds a control character';
  const parts = path.split('/');
  if (parts.includes('..')) return 'climbs out of its folder with ..; write a path inside the package';
  if (parts.includes('.') || parts.includes('')) return 'holds an empty step; write it without ./ and //';
  return null;
}

function hasControlCharacter(path: string): boolean {
  return [...path].some((letter) => letter < ' ' || letter === '\u007f');
}

/** Files that systems leave beside others: passed over in silence. */
export function isLitter(path: string): boolean {
  const parts = path.split('/');
  const name = parts.at(-1) ?? '';
  return parts[0] === '__MACOSX' || name.startsWith('.') || name === 'Thumbs.db' || name === 'desktop.ini';
}
