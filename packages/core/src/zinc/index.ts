export * from './adherence-question.ts';
export * from './survey.ts';
export * from './thickness-question.ts';
export * from './thickness-rule.ts';
