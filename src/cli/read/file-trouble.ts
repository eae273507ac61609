/** Why a file cannot be read or written, in words; otherwise the system's own message. */
export function fileTrouble(error: unknown, missing: string): string {
  const { code, message } = error as NodeJS.ErrnoException;
  switch (code) {
    case 'ENOENT':
      return missing;
    case 'EISDIR':
      return 'it is a folder, not a file';
    case 'EACCES':
    case 'EPERM':
      return 'you have no permission to use it';
    case 'ENOSPC':
      return 'no room is left on the disk';
    case 'ENAMETOOLONG':
      return 'its name is too long';
    default:
      return message;
  }
}
