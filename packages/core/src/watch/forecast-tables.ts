import byTable from './tables/forecast-by-table.json' with { type: 'json' };
import byTime from './tables/forecast-by-time.json' with { type: 'json' };

/**
 * Models and distances of the forecast, by what the curve is drawn over: the travel of the table, or the time where no table is read. Each is
 * tuned on simulated pulls read in its own way; over the time an eased valve bends the curve as hardening does, so its intervals are wider.
 */
export const forecastTables = { table: byTable, time: byTime } as const;

export type ForecastAxis = keyof typeof forecastTables;
