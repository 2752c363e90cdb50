import type { AskedColumn } from '../../components/row-form.tsx';
import { text } from '../../lib/text.ts';

const { fields } = text.kit;

/** What is asked of an instrument once its name is given. */
export function instrumentFacts(unit?: string): readonly AskedColumn[] {
  const inUnit = unit === undefined ? {} : { unit };
  return [
    { column: 'kind', label: fields.kind },
    { column: 'description', label: fields.description },
    { column: 'unit', label: fields.unit },
    { column: 'resolution', label: fields.resolution, ...inUnit },
    { column: 'range_minimum', label: fields.range_minimum, ...inUnit },
    { column: 'range_maximum', label: fields.range_maximum, ...inUnit },
    { column: 'class', label: fields.class },
    { column: 'extension_class', label: fields.extension_class },
    { column: 'compliance_mm_per_kN', label: fields.compliance_mm_per_kN, unit: 'mm/kN' },
  ];
}

export const newInstrument: readonly AskedColumn[] = [
  { column: 'instrument', label: fields.instrument },
  ...instrumentFacts(),
];

export function certificateFacts(unit: string): readonly AskedColumn[] {
  return [
    { column: 'calibrated_on', label: fields.calibrated_on },
    { column: 'due_on', label: fields.due_on },
    { column: 'expanded_uncertainty', label: fields.expanded_uncertainty, unit },
    { column: 'coverage_factor', label: fields.coverage_factor },
  ];
}

export function newCertificate(unit: string): readonly AskedColumn[] {
  return [{ column: 'calibration', label: fields.calibration }, ...certificateFacts(unit)];
}

export function newCheck(unit: string, references: readonly string[]): readonly AskedColumn[] {
  return [
    { column: 'reference', label: fields.reference, list: references },
    { column: 'reference_value', label: fields.reference_value, unit },
    { column: 'reading', label: fields.reading, unit },
    { column: 'note', label: fields.note },
  ];
}
