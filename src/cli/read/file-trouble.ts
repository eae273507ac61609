/** Why a file cannot be read or written, in words; what the system says where that is all there is. */
export function fileTrouble(error: unknown, missing: string): string {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case 'ENOENT':
      return missing;
    case 'EISDIR':
      return 'it is a folder, and a file is wanted';
    case 'EACCES':
    case 'EPERM':
      return 'this user may not use it';
    case 'ENOSPC':
      return 'no room is left on the disk';
    case 'ENAMETOOLONG':
      return 'its name is too long';
    default:
      return message;
  }
}
