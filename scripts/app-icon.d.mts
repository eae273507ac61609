export function iconSvg(): string;
export function iconPng(size: number, isFull?: boolean): Buffer;
