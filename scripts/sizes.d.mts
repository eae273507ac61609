export interface Measured {
  readonly name: string;
  readonly aim: number;
  readonly limit: number;
  readonly bytes: number;
  readonly files: readonly string[];
}

export function measure(): Promise<Measured[]>;
