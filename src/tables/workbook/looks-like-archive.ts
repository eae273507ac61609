/** Whether the bytes begin as a zip archive does, which is what a workbook is. */
export function looksLikeArchive(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
}
