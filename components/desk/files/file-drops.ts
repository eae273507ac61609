interface Acts {
  /** Files came to be held over the element, or no longer are. */
  over(over: boolean): void;
  dropped(files: readonly File[]): void;
}

const holdsFiles = (event: DragEvent): boolean =>
  event.dataTransfer?.types.includes('Files') ?? false;

/** Files dropped anywhere on an element, but where something within it takes them itself. */
export function fileDrops(host: HTMLElement, acts: Acts): { listen(): void; end(): void } {
  const onOver = (event: DragEvent): void => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    acts.over(true);
  };
  const onLeave = (event: DragEvent): void => {
    // Between two parts of the element the files are still over it.
    if (!host.contains(event.relatedTarget as Node | null)) acts.over(false);
  };
  const onDrop = (event: DragEvent): void => {
    acts.over(false);
    if (event.defaultPrevented || !holdsFiles(event)) return;
    event.preventDefault();
    acts.dropped([...(event.dataTransfer?.files ?? [])]);
  };
  return {
    listen() {
      host.addEventListener('dragover', onOver);
      host.addEventListener('dragleave', onLeave);
      host.addEventListener('drop', onDrop);
    },
    end() {
      host.removeEventListener('dragover', onOver);
      host.removeEventListener('dragleave', onLeave);
      host.removeEventListener('drop', onDrop);
    },
  };
}
