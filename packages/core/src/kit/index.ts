export * from './allowed-deviation.ts';
export * from './certificate.ts';
export * from './control-chart.ts';
