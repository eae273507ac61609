/** A file that the device opened with the installed page. @see Launch Handler API and File Handling, WICG. */
interface OpenedFile {
  getFile(): Promise<File>;
}
interface LaunchQueue {
  setConsumer(take: (launched: { readonly files?: readonly OpenedFile[] }) => void): void;
}

/** Gives files that the device opens with the installed page to `read`; nothing where a browser knows of none. */
export function takeOpenedFiles(read: (files: readonly File[]) => void): void {
  const { launchQueue } = globalThis as { readonly launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(({ files = [] }) => {
    if (files.length > 0) void Promise.all(files.map((file) => file.getFile())).then(read);
  });
}
