export const UNITS = { mm: 'millimetres', cm: 'centimetres', in: 'inches' } as const;
