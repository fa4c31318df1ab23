import 'vega';

declare module 'vega' {
  /** How wide Vega takes a text for, px; missing in its own types. */
  export const textMetrics: {
    width: (item: { readonly text?: string | number; readonly fontSize?: number }, text?: string | number) => number;
  };
}
