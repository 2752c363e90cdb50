// Made from the OpenAPI document of the server by tools/api-types/make.ts; a test keeps it true. Do not edit.
import type * as contract from '@provinghouse/contract';

export interface paths {
    readonly "/api/bench/corrections": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-bench-corrections"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/bench/files": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** Files of a book, by path: recordings, photographs, own specifications */
        readonly get: operations["get-bench-files"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/bench/files/{*}": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-bench-files-path"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/bench/ledger": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The ledger, newest entry first, searched for words */
        readonly get: operations["get-bench-ledger"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/bench/ledger/state": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** Whether the ledger is whole */
        readonly get: operations["get-bench-ledger-state"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/bench/records": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-bench-records"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/bench/records/{kind}": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-bench-records-kind"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/bench/withdrawals": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-bench-withdrawals"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The campaigns of the record */
        readonly get: operations["get-campaigns"];
        readonly put?: never;
        readonly post: operations["post-campaigns"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The finding of a campaign */
        readonly get: operations["get-campaigns-code"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/brief": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** What was asked, and what can be shown */
        readonly get: operations["get-campaigns-code-brief"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/corrections": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-campaigns-code-corrections"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/files": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** Files of a book, by path: recordings, photographs, own specifications */
        readonly get: operations["get-campaigns-code-files"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/files/{*}": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-campaigns-code-files-path"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/labels.pdf": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-campaigns-code-labelspdf"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/ledger": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The ledger, newest entry first, searched for words */
        readonly get: operations["get-campaigns-code-ledger"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/ledger/state": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** Whether the ledger is whole */
        readonly get: operations["get-campaigns-code-ledger-state"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/package.zip": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The data package as a ZIP */
        readonly get: operations["get-campaigns-code-packagezip"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/plan/freeze": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-campaigns-code-plan-freeze"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/planned-pulls": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The order in which the pieces are to be pulled */
        readonly get: operations["get-campaigns-code-plannedpulls"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/pulls/{pull}/curve": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The curve of a pull */
        readonly get: operations["get-campaigns-code-pulls-pull-curve"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/records": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-campaigns-code-records"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/records/{kind}": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-campaigns-code-records-kind"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/report.pdf": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** The report as PDF */
        readonly get: operations["get-campaigns-code-reportpdf"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/samples/cut": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-campaigns-code-samples-cut"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/trace-preview": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        /** A file that was sent, read as the recording it would be; nothing is kept */
        readonly post: operations["post-campaigns-code-tracepreview"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/unblind": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-campaigns-code-unblind"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/campaigns/{code}/withdrawals": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-campaigns-code-withdrawals"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/demo": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-demo"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/files": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put: operations["put-files"];
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/kit/{instrument}/hanging": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** What hangs on an instrument */
        readonly get: operations["get-kit-instrument-hanging"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/kit/in-campaigns": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        /** Kit of campaigns */
        readonly get: operations["get-kit-incampaigns"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/problems/{code}": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-problems-code"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-rigs"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs/{rig}": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get: operations["get-rigs-rig"];
        readonly put?: never;
        readonly post?: never;
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs/{rig}/arm": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-rigs-rig-arm"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs/{rig}/go-on": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-rigs-rig-goon"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs/{rig}/mark": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-rigs-rig-mark"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs/{rig}/recover": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-rigs-rig-recover"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs/{rig}/start": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-rigs-rig-start"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
    readonly "/api/rigs/{rig}/stop": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly get?: never;
        readonly put?: never;
        readonly post: operations["post-rigs-rig-stop"];
        readonly delete?: never;
        readonly options?: never;
        readonly head?: never;
        readonly patch?: never;
        readonly trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        /** @description problem details of RFC 9457; `code` is stable, `fault` is the code of the fault where it has one of its own */
        readonly Problem: {
            readonly code: string;
            readonly detail: string;
            readonly fault?: string;
            readonly status: number;
            readonly title: string;
            readonly type: string;
        };
    };
    responses: never;
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    readonly "post-bench-corrections": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly body: Record<string, never>;
                    readonly id: string;
                    /** @enum {string} */
                    readonly kind: "campaign" | "people" | "instruments" | "calibrations" | "checks" | "products" | "samples" | "custody" | "pieces" | "gauging" | "pulls" | "breaks" | "zinc" | "photographs";
                    readonly revision: number;
                    readonly who: string;
                    readonly why: string;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                        readonly revision: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-bench-files": {
        readonly parameters: {
            readonly query?: {
                readonly after?: string;
                readonly limit?: number;
                /** @description how the paths asked for begin */
                readonly under?: string;
            };
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        readonly files: readonly {
                            readonly media: string;
                            readonly path: string;
                            readonly sha256: string;
                            readonly size: number;
                        }[];
                        /** @description what to ask the next page with, as `after` */
                        readonly next: string | null;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-bench-files-path": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly "*": string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content?: never;
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-bench-ledger": {
        readonly parameters: {
            readonly query?: {
                readonly before?: number;
                /** @description kinds of record, parted by commas; empty for all */
                readonly kinds?: string;
                readonly limit?: number;
                readonly search?: string;
            };
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description what was written, by whom, when and why, and the cells it changed, the newest first */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.LedgerPage;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-bench-ledger-state": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description whether the chain of hashes holds and everything kept agrees with it */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.LedgerState;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-bench-records": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly files?: readonly {
                        readonly path: string;
                        readonly sha256: string;
                    }[];
                    readonly override?: string | null;
                    readonly rows: {
                        readonly breaks?: readonly {
                            /** @description who read the break */
                            readonly examiner: string;
                            /** @description link that parted, from the fixed end; 0 for a gripped link */
                            readonly link: number;
                            /** @description how */
                            readonly mode: string;
                            /** @description what was seen */
                            readonly note: string | null;
                            /** @description where */
                            readonly position: string;
                            /** @description which pull */
                            readonly pull: string;
                        }[];
                        readonly calibrations?: readonly {
                            /** @description day of calibration */
                            readonly calibrated_on: string;
                            /** @description number of the certificate */
                            readonly calibration: string;
                            /** @description factor k it was stated with */
                            readonly coverage_factor: number | null;
                            /** @description day it falls due */
                            readonly due_on: string;
                            /** @description expanded uncertainty on the certificate, in the instrument's unit; for a rig with a class leave it empty */
                            readonly expanded_uncertainty: number | null;
                            /** @description which instrument */
                            readonly instrument: string;
                        }[];
                        readonly checks?: readonly {
                            /** @description who read it */
                            readonly by: string | null;
                            /** @description when */
                            readonly checked_at: string;
                            /** @description which instrument */
                            readonly instrument: string;
                            /** @description anything seen */
                            readonly note: string | null;
                            /** @description what the instrument showed, in the instrument's unit */
                            readonly reading: number;
                            /** @description what it was read against */
                            readonly reference: string | null;
                            /** @description its known value, in the instrument's unit */
                            readonly reference_value: number;
                        }[];
                        readonly custody?: readonly {
                            /** @description who moved it */
                            readonly by: string | null;
                            /** @description day by which it must come back, where it left the laboratory or was lent */
                            readonly due_back_on: string | null;
                            /** @description 1 for the receipt, 2, 3 ... in turn */
                            readonly move: number;
                            /** @description when */
                            readonly moved_at: string;
                            /** @description anything seen */
                            readonly note: string | null;
                            /** @description where it was put */
                            readonly place: string;
                            /** @description which sample */
                            readonly sample: string;
                        }[];
                        readonly gauging?: readonly {
                            /** @description read by */
                            readonly by: string;
                            /** @description 1, and 2 for the reading at right angles, and so on */
                            readonly direction: number;
                            /** @description read with */
                            readonly instrument: string;
                            /** @description link, counted from the fixed end; empty for the piece as a whole */
                            readonly link: number | null;
                            /** @description for lengthOverLinks: over how many links */
                            readonly over_links: number | null;
                            /** @description which piece */
                            readonly piece: string;
                            /** @description where on the link */
                            readonly position: string;
                            /** @description what was read */
                            readonly quantity: string;
                            /** @description when */
                            readonly read_at: string | null;
                            /** @description 1 for the first reading, 2 for the same place read again */
                            readonly repeat: number;
                            /** @description the reading, mm */
                            readonly value_mm: number;
                        }[];
                        readonly instruments?: readonly {
                            /** @description for a rig: class of ISO 7500-1 on the certificate (0.5, 1, 2, 3): error of indication in per cent */
                            readonly class: number | null;
                            /** @description for a rig: stretch of frame and grips per kilonewton, where it was measured */
                            readonly compliance_mm_per_kN: number | null;
                            /** @description make is not needed; type and range help */
                            readonly description: string | null;
                            /** @description for a rig: class of ISO 9513 of its extension or table measurement (0.5, 1, 2): error of indication in per cent */
                            readonly extension_class: number | null;
                            /** @description short name used in the other tables */
                            readonly instrument: string;
                            /** @description what it is */
                            readonly kind: string;
                            /** @description greatest verified value, in its unit; for a rig also where its reading clips */
                            readonly range_maximum: number | null;
                            /** @description least verified value, in its unit */
                            readonly range_minimum: number | null;
                            /** @description smallest step it shows, in its unit */
                            readonly resolution: number;
                            /** @description unit of resolution, range and expanded uncertainty */
                            readonly unit: string;
                        }[];
                        readonly people?: readonly {
                            /** @description name as printed */
                            readonly name: string;
                            /** @description short name used in the other tables */
                            readonly person: string;
                            /** @description what they do in this campaign */
                            readonly role: string | null;
                        }[];
                        readonly photographs?: readonly {
                            /** @description who took it */
                            readonly by: string | null;
                            /** @description what is to be seen */
                            readonly caption: string | null;
                            /** @description path in this package below photographs/ */
                            readonly file: string;
                            /** @description piece shown */
                            readonly piece: string | null;
                            /** @description sample shown */
                            readonly sample: string | null;
                            /** @description when */
                            readonly taken_at: string | null;
                        }[];
                        readonly pieces?: readonly {
                            /** @description sum of the inside lengths of the free links at the preload, mm; left empty it is taken from the gauged pitch, else from the nominal pitch, and said so */
                            readonly gauge_length_mm: number | null;
                            /** @description what the callipers touched: bare steel, or the zinc (then twice the mean zinc thickness of the piece comes off the bar) */
                            readonly gauged_over: string | null;
                            /** @description free links between the grips (gripped links are not counted) */
                            readonly links: number;
                            /** @description anything seen */
                            readonly note: string | null;
                            /** @description code of the piece, on its tag */
                            readonly piece: string;
                            /** @description which sample it was cut from */
                            readonly sample: string;
                        }[];
                        readonly products?: readonly {
                            /** @description breaking force on the mark or label, kN, where one is claimed beside the specification */
                            readonly claimed_breaking_force_kN: number | null;
                            /** @description currency of the price, ISO 4217 */
                            readonly currency: string | null;
                            /** @description as sold */
                            readonly description: string | null;
                            /** @description grade claimed, as the specification names it; may be left out where it has only one */
                            readonly grade: string | null;
                            /** @description nominal size d, mm */
                            readonly nominal_size_mm: number;
                            /** @description price of one metre */
                            readonly price_per_metre: number | null;
                            /** @description code of the product */
                            readonly product: string;
                            /** @description rulebook entry it is judged by (`provinghouse reckon --rules` lists them), or the id of an own specification in specifications/ */
                            readonly specification: string;
                            /** @description who sells it */
                            readonly supplier: string;
                        }[];
                        readonly pulls?: readonly {
                            /** @description column that is extension of the links, likewise */
                            readonly extension_column: string | null;
                            /** @description column that is force, likewise */
                            readonly force_column: string | null;
                            /** @description why not; needed when valid is false */
                            readonly invalid_reason: string | null;
                            /** @description anything seen or heard */
                            readonly note: string | null;
                            /** @description who pulled */
                            readonly operator: string | null;
                            /** @description maximum read off the panel by eye, kN, where there is no trace */
                            readonly panel_maximum_kN: number | null;
                            /** @description standard uncertainty of that reading by eye, kN */
                            readonly panel_uncertainty_kN: number | null;
                            /** @description which piece */
                            readonly piece: string;
                            /** @description code of the pull */
                            readonly pull: string;
                            /** @description when */
                            readonly pulled_at: string | null;
                            /** @description on which rig */
                            readonly rig: string;
                            /** @description column that is table (crosshead) travel, likewise */
                            readonly table_column: string | null;
                            /** @description column of the trace that is time, where the header leaves it open; a unit may follow in brackets: t[s] */
                            readonly time_column: string | null;
                            /** @description recording, a path in this package below traces/ */
                            readonly trace: string | null;
                            /** @description false when the pull must not be used */
                            readonly valid: boolean;
                        }[];
                        readonly samples?: readonly {
                            /** @description marks found on chain or tag */
                            readonly batch_mark: string | null;
                            /** @description where and how it was bought */
                            readonly bought_from: string | null;
                            /** @description condition on receipt */
                            readonly condition: string | null;
                            /** @description length received, m */
                            readonly length_m: number | null;
                            /** @description mass of that length, kg */
                            readonly mass_kg: number | null;
                            /** @description which product */
                            readonly product: string;
                            /** @description who received it */
                            readonly received_by: string | null;
                            /** @description day received */
                            readonly received_on: string;
                            /** @description code of the sample */
                            readonly sample: string;
                        }[];
                        readonly zinc?: readonly {
                            /** @description after deformation: 0 no change, 1 fine crazing, 2 cracked but adherent, 3 flakes under 10 % of the strained zone, 4 flakes 10 to 50 %, 5 over 50 % or sheets */
                            readonly adherence: number | null;
                            /** @description read by */
                            readonly by: string | null;
                            /** @description share of the strained zone that is bare, % */
                            readonly flaked_share_pct: number | null;
                            /** @description read with */
                            readonly instrument: string | null;
                            /** @description which link */
                            readonly link: number;
                            /** @description what was seen */
                            readonly note: string | null;
                            /** @description which piece */
                            readonly piece: string;
                            /** @description 1, 2, 3 ... on that link */
                            readonly reading: number;
                            /** @description zinc thickness, um */
                            readonly thickness_um: number | null;
                        }[];
                    };
                    readonly who: string;
                    readonly why?: string | null;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-bench-records-kind": {
        readonly parameters: {
            readonly query?: {
                readonly after?: number;
                readonly limit?: number;
            };
            readonly header?: never;
            readonly path: {
                readonly kind: "campaign" | "people" | "instruments" | "calibrations" | "checks" | "products" | "samples" | "custody" | "pieces" | "gauging" | "pulls" | "breaks" | "zinc" | "photographs";
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description what to ask the next page with, as `after` */
                        readonly next: number | null;
                        readonly rows: readonly {
                            /** @description when it was written last, ISO 8601 */
                            readonly at: string;
                            /** @description the row, all columns of its table */
                            readonly body: {
                                readonly [key: string]: unknown;
                            };
                            readonly id: string;
                            readonly revision: number;
                            readonly who: string;
                        }[];
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-bench-withdrawals": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly id: string;
                    /** @enum {string} */
                    readonly kind: "campaign" | "people" | "instruments" | "calibrations" | "checks" | "products" | "samples" | "custody" | "pieces" | "gauging" | "pulls" | "breaks" | "zinc" | "photographs";
                    readonly revision: number;
                    readonly who: string;
                    readonly why: string;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns": {
        readonly parameters: {
            readonly query?: {
                readonly after?: string;
                readonly limit?: number;
            };
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        readonly campaigns: readonly contract.CampaignSummary[];
                        /** @description what to ask the next page with, as `after` */
                        readonly next: string | null;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly campaign: {
                        /** @description open, or blind: from the freezing of the plan to the unblinding no screen and no page names product or supplier */
                        readonly blinding: string | null;
                        /** @description code of the campaign, short and unique in the record */
                        readonly campaign: string;
                        /** @description who asked */
                        readonly client: string | null;
                        /** @description factor k of the expanded uncertainty U = k u */
                        readonly coverage_factor: number;
                        /** @description how a value meets its limit: simple acceptance (the value itself), or guarded acceptance (the value less its expanded uncertainty U, guard band w = U) */
                        readonly decision_rule: string;
                        /** @description who tests, with place */
                        readonly laboratory: string | null;
                        /** @description a marking every page must carry, such as "invented demonstration data" */
                        readonly marking: string | null;
                        /** @description how the pulls were made: preload, speed, grips */
                        readonly method: string | null;
                        /** @description day the campaign was opened */
                        readonly opened_on: string;
                        /** @description seed from which the order of the pulls is drawn, so that anybody draws the same order */
                        readonly order_seed: number | null;
                        /** @description how many pieces of each product are to be pulled, as planned */
                        readonly pieces_per_product: number | null;
                        /** @description when the plan was frozen, before the first pull; a later change is an amendment with its reason */
                        readonly plan_frozen_at: string | null;
                        /** @description the question asked, in the words of who asked it */
                        readonly question: string;
                        /** @description how the samples were chosen and bought */
                        readonly sampling: string | null;
                        /** @description greatest table speed the method allows in the loaded part, mm/min */
                        readonly table_speed_max_mm_per_min: number | null;
                        /** @description least table speed the method allows in the loaded part, mm/min */
                        readonly table_speed_min_mm_per_min: number | null;
                        /** @description title of the finding */
                        readonly title: string;
                        /** @description when a blind campaign was unblinded */
                        readonly unblinded_at: string | null;
                    };
                    readonly who: string;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description the whole finding of a campaign */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.CampaignFinding;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-brief": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description what was asked, and what the pieces prepared can show */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.BriefFinding;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns-code-corrections": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly body: Record<string, never>;
                    readonly id: string;
                    /** @enum {string} */
                    readonly kind: "campaign" | "people" | "instruments" | "calibrations" | "checks" | "products" | "samples" | "custody" | "pieces" | "gauging" | "pulls" | "breaks" | "zinc" | "photographs";
                    readonly revision: number;
                    readonly who: string;
                    readonly why: string;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                        readonly revision: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-files": {
        readonly parameters: {
            readonly query?: {
                readonly after?: string;
                readonly limit?: number;
                /** @description how the paths asked for begin */
                readonly under?: string;
            };
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        readonly files: readonly {
                            readonly media: string;
                            readonly path: string;
                            readonly sha256: string;
                            readonly size: number;
                        }[];
                        /** @description what to ask the next page with, as `after` */
                        readonly next: string | null;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-files-path": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly "*": string;
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content?: never;
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-labelspdf": {
        readonly parameters: {
            readonly query?: {
                /** @description ticks to cut by, for plain paper */
                readonly marks?: boolean;
                /** @description codes with commas between; empty for all */
                readonly pieces?: string;
                readonly sheet?: "a4-3x8" | "single-62x29";
                /** @description labels of the first sheet used before */
                readonly used?: number;
            };
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content?: never;
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-ledger": {
        readonly parameters: {
            readonly query?: {
                readonly before?: number;
                /** @description kinds of record, parted by commas; empty for all */
                readonly kinds?: string;
                readonly limit?: number;
                readonly search?: string;
            };
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description what was written, by whom, when and why, and the cells it changed, the newest first */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.LedgerPage;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-ledger-state": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description whether the chain of hashes holds and everything kept agrees with it */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.LedgerState;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-packagezip": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content?: never;
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns-code-plan-freeze": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly who: string;
                    readonly why: string;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                        readonly revision: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-plannedpulls": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description the order of the pulls, drawn by lot from the seed of the plan */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.PlannedPulls;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-pulls-pull-curve": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
                readonly pull: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description the curve of a pull, thinned for drawing so that extremes stay */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.PullCurve;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns-code-records": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly files?: readonly {
                        readonly path: string;
                        readonly sha256: string;
                    }[];
                    readonly override?: string | null;
                    readonly rows: {
                        readonly breaks?: readonly {
                            /** @description who read the break */
                            readonly examiner: string;
                            /** @description link that parted, from the fixed end; 0 for a gripped link */
                            readonly link: number;
                            /** @description how */
                            readonly mode: string;
                            /** @description what was seen */
                            readonly note: string | null;
                            /** @description where */
                            readonly position: string;
                            /** @description which pull */
                            readonly pull: string;
                        }[];
                        readonly calibrations?: readonly {
                            /** @description day of calibration */
                            readonly calibrated_on: string;
                            /** @description number of the certificate */
                            readonly calibration: string;
                            /** @description factor k it was stated with */
                            readonly coverage_factor: number | null;
                            /** @description day it falls due */
                            readonly due_on: string;
                            /** @description expanded uncertainty on the certificate, in the instrument's unit; for a rig with a class leave it empty */
                            readonly expanded_uncertainty: number | null;
                            /** @description which instrument */
                            readonly instrument: string;
                        }[];
                        readonly checks?: readonly {
                            /** @description who read it */
                            readonly by: string | null;
                            /** @description when */
                            readonly checked_at: string;
                            /** @description which instrument */
                            readonly instrument: string;
                            /** @description anything seen */
                            readonly note: string | null;
                            /** @description what the instrument showed, in the instrument's unit */
                            readonly reading: number;
                            /** @description what it was read against */
                            readonly reference: string | null;
                            /** @description its known value, in the instrument's unit */
                            readonly reference_value: number;
                        }[];
                        readonly custody?: readonly {
                            /** @description who moved it */
                            readonly by: string | null;
                            /** @description day by which it must come back, where it left the laboratory or was lent */
                            readonly due_back_on: string | null;
                            /** @description 1 for the receipt, 2, 3 ... in turn */
                            readonly move: number;
                            /** @description when */
                            readonly moved_at: string;
                            /** @description anything seen */
                            readonly note: string | null;
                            /** @description where it was put */
                            readonly place: string;
                            /** @description which sample */
                            readonly sample: string;
                        }[];
                        readonly gauging?: readonly {
                            /** @description read by */
                            readonly by: string;
                            /** @description 1, and 2 for the reading at right angles, and so on */
                            readonly direction: number;
                            /** @description read with */
                            readonly instrument: string;
                            /** @description link, counted from the fixed end; empty for the piece as a whole */
                            readonly link: number | null;
                            /** @description for lengthOverLinks: over how many links */
                            readonly over_links: number | null;
                            /** @description which piece */
                            readonly piece: string;
                            /** @description where on the link */
                            readonly position: string;
                            /** @description what was read */
                            readonly quantity: string;
                            /** @description when */
                            readonly read_at: string | null;
                            /** @description 1 for the first reading, 2 for the same place read again */
                            readonly repeat: number;
                            /** @description the reading, mm */
                            readonly value_mm: number;
                        }[];
                        readonly instruments?: readonly {
                            /** @description for a rig: class of ISO 7500-1 on the certificate (0.5, 1, 2, 3): error of indication in per cent */
                            readonly class: number | null;
                            /** @description for a rig: stretch of frame and grips per kilonewton, where it was measured */
                            readonly compliance_mm_per_kN: number | null;
                            /** @description make is not needed; type and range help */
                            readonly description: string | null;
                            /** @description for a rig: class of ISO 9513 of its extension or table measurement (0.5, 1, 2): error of indication in per cent */
                            readonly extension_class: number | null;
                            /** @description short name used in the other tables */
                            readonly instrument: string;
                            /** @description what it is */
                            readonly kind: string;
                            /** @description greatest verified value, in its unit; for a rig also where its reading clips */
                            readonly range_maximum: number | null;
                            /** @description least verified value, in its unit */
                            readonly range_minimum: number | null;
                            /** @description smallest step it shows, in its unit */
                            readonly resolution: number;
                            /** @description unit of resolution, range and expanded uncertainty */
                            readonly unit: string;
                        }[];
                        readonly people?: readonly {
                            /** @description name as printed */
                            readonly name: string;
                            /** @description short name used in the other tables */
                            readonly person: string;
                            /** @description what they do in this campaign */
                            readonly role: string | null;
                        }[];
                        readonly photographs?: readonly {
                            /** @description who took it */
                            readonly by: string | null;
                            /** @description what is to be seen */
                            readonly caption: string | null;
                            /** @description path in this package below photographs/ */
                            readonly file: string;
                            /** @description piece shown */
                            readonly piece: string | null;
                            /** @description sample shown */
                            readonly sample: string | null;
                            /** @description when */
                            readonly taken_at: string | null;
                        }[];
                        readonly pieces?: readonly {
                            /** @description sum of the inside lengths of the free links at the preload, mm; left empty it is taken from the gauged pitch, else from the nominal pitch, and said so */
                            readonly gauge_length_mm: number | null;
                            /** @description what the callipers touched: bare steel, or the zinc (then twice the mean zinc thickness of the piece comes off the bar) */
                            readonly gauged_over: string | null;
                            /** @description free links between the grips (gripped links are not counted) */
                            readonly links: number;
                            /** @description anything seen */
                            readonly note: string | null;
                            /** @description code of the piece, on its tag */
                            readonly piece: string;
                            /** @description which sample it was cut from */
                            readonly sample: string;
                        }[];
                        readonly products?: readonly {
                            /** @description breaking force on the mark or label, kN, where one is claimed beside the specification */
                            readonly claimed_breaking_force_kN: number | null;
                            /** @description currency of the price, ISO 4217 */
                            readonly currency: string | null;
                            /** @description as sold */
                            readonly description: string | null;
                            /** @description grade claimed, as the specification names it; may be left out where it has only one */
                            readonly grade: string | null;
                            /** @description nominal size d, mm */
                            readonly nominal_size_mm: number;
                            /** @description price of one metre */
                            readonly price_per_metre: number | null;
                            /** @description code of the product */
                            readonly product: string;
                            /** @description rulebook entry it is judged by (`provinghouse reckon --rules` lists them), or the id of an own specification in specifications/ */
                            readonly specification: string;
                            /** @description who sells it */
                            readonly supplier: string;
                        }[];
                        readonly pulls?: readonly {
                            /** @description column that is extension of the links, likewise */
                            readonly extension_column: string | null;
                            /** @description column that is force, likewise */
                            readonly force_column: string | null;
                            /** @description why not; needed when valid is false */
                            readonly invalid_reason: string | null;
                            /** @description anything seen or heard */
                            readonly note: string | null;
                            /** @description who pulled */
                            readonly operator: string | null;
                            /** @description maximum read off the panel by eye, kN, where there is no trace */
                            readonly panel_maximum_kN: number | null;
                            /** @description standard uncertainty of that reading by eye, kN */
                            readonly panel_uncertainty_kN: number | null;
                            /** @description which piece */
                            readonly piece: string;
                            /** @description code of the pull */
                            readonly pull: string;
                            /** @description when */
                            readonly pulled_at: string | null;
                            /** @description on which rig */
                            readonly rig: string;
                            /** @description column that is table (crosshead) travel, likewise */
                            readonly table_column: string | null;
                            /** @description column of the trace that is time, where the header leaves it open; a unit may follow in brackets: t[s] */
                            readonly time_column: string | null;
                            /** @description recording, a path in this package below traces/ */
                            readonly trace: string | null;
                            /** @description false when the pull must not be used */
                            readonly valid: boolean;
                        }[];
                        readonly samples?: readonly {
                            /** @description marks found on chain or tag */
                            readonly batch_mark: string | null;
                            /** @description where and how it was bought */
                            readonly bought_from: string | null;
                            /** @description condition on receipt */
                            readonly condition: string | null;
                            /** @description length received, m */
                            readonly length_m: number | null;
                            /** @description mass of that length, kg */
                            readonly mass_kg: number | null;
                            /** @description which product */
                            readonly product: string;
                            /** @description who received it */
                            readonly received_by: string | null;
                            /** @description day received */
                            readonly received_on: string;
                            /** @description code of the sample */
                            readonly sample: string;
                        }[];
                        readonly zinc?: readonly {
                            /** @description after deformation: 0 no change, 1 fine crazing, 2 cracked but adherent, 3 flakes under 10 % of the strained zone, 4 flakes 10 to 50 %, 5 over 50 % or sheets */
                            readonly adherence: number | null;
                            /** @description read by */
                            readonly by: string | null;
                            /** @description share of the strained zone that is bare, % */
                            readonly flaked_share_pct: number | null;
                            /** @description read with */
                            readonly instrument: string | null;
                            /** @description which link */
                            readonly link: number;
                            /** @description what was seen */
                            readonly note: string | null;
                            /** @description which piece */
                            readonly piece: string;
                            /** @description 1, 2, 3 ... on that link */
                            readonly reading: number;
                            /** @description zinc thickness, um */
                            readonly thickness_um: number | null;
                        }[];
                    };
                    readonly who: string;
                    readonly why?: string | null;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-records-kind": {
        readonly parameters: {
            readonly query?: {
                readonly after?: number;
                readonly limit?: number;
            };
            readonly header?: never;
            readonly path: {
                readonly code: string;
                readonly kind: "campaign" | "people" | "instruments" | "calibrations" | "checks" | "products" | "samples" | "custody" | "pieces" | "gauging" | "pulls" | "breaks" | "zinc" | "photographs";
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description what to ask the next page with, as `after` */
                        readonly next: number | null;
                        readonly rows: readonly {
                            /** @description when it was written last, ISO 8601 */
                            readonly at: string;
                            /** @description the row, all columns of its table */
                            readonly body: {
                                readonly [key: string]: unknown;
                            };
                            readonly id: string;
                            readonly revision: number;
                            readonly who: string;
                        }[];
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-campaigns-code-reportpdf": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content?: never;
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns-code-samples-cut": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    /** @description pieces cut now */
                    readonly count: number;
                    /** @enum {string|null} */
                    readonly gaugedOver: "bare steel" | "zinc" | null;
                    /** @description free links of each */
                    readonly links: number;
                    readonly note: string | null;
                    /** @description pieces the sample had when this was asked */
                    readonly piecesBefore: number;
                    readonly sample: string;
                    readonly who: string;
                    readonly why?: string | null;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                        /** @description codes of the pieces, in the order of their tags */
                        readonly pieces: readonly string[];
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns-code-tracepreview": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly columns?: {
                        readonly extension: string | null;
                        readonly force: string | null;
                        readonly table: string | null;
                        readonly time: string | null;
                    };
                    readonly name: string;
                    readonly piece: string | null;
                    readonly pulledAt: string | null;
                    readonly rig: string | null;
                    readonly sha256: string;
                };
            };
        };
        readonly responses: {
            /** @description what a file that was sent would be as the recording of a pull */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.TracePreview;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns-code-unblind": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly who: string;
                    readonly why: string;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                        readonly revision: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-campaigns-code-withdrawals": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly id: string;
                    /** @enum {string} */
                    readonly kind: "campaign" | "people" | "instruments" | "calibrations" | "checks" | "products" | "samples" | "custody" | "pieces" | "gauging" | "pulls" | "breaks" | "zinc" | "photographs";
                    readonly revision: number;
                    readonly who: string;
                    readonly why: string;
                };
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-demo": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": Record<string, never>;
            };
        };
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        readonly campaign: string;
                        /** @description place of the last entry in the ledger: it is kept */
                        readonly ledgerSeq: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "put-files": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": {
                        readonly sha256: string;
                        readonly size: number;
                    };
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-kit-instrument-hanging": {
        readonly parameters: {
            readonly query: {
                readonly from: string;
                readonly to: string;
            };
            readonly header?: never;
            readonly path: {
                readonly instrument: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description what was read with an instrument in a stretch of time */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.HangingResults;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-kit-incampaigns": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description instruments that only campaigns hold */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.KitInCampaigns;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-problems-code": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly code: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content?: never;
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-rigs": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path?: never;
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description Default Response */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": readonly contract.RigDesk[];
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "get-rigs-rig": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly rig: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody?: never;
        readonly responses: {
            /** @description what stands on a rig, and whether a pull is armed, runs or is unfinished */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.RigDesk;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-rigs-rig-arm": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly rig: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly campaign: string;
                    readonly cautions: readonly ("guards closed" | "nobody in line with the chain" | "eyes and ears protected" | "stored energy")[];
                    readonly confirmed: string;
                    readonly operator: string | null;
                    readonly piece: string;
                };
            };
        };
        readonly responses: {
            /** @description what stands on a rig, and whether a pull is armed, runs or is unfinished */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.RigDesk;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-rigs-rig-goon": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly rig: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly cautions: readonly ("guards closed" | "nobody in line with the chain" | "eyes and ears protected" | "stored energy")[];
                    readonly confirmed: string;
                    readonly spool: string;
                };
            };
        };
        readonly responses: {
            /** @description what stands on a rig, and whether a pull is armed, runs or is unfinished */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.RigDesk;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-rigs-rig-mark": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly rig: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly words: string;
                };
            };
        };
        readonly responses: {
            /** @description what stands on a rig, and whether a pull is armed, runs or is unfinished */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.RigDesk;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-rigs-rig-recover": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly rig: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": {
                    readonly spool: string;
                };
            };
        };
        readonly responses: {
            /** @description what stands on a rig, and whether a pull is armed, runs or is unfinished */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.RigDesk;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-rigs-rig-start": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly rig: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": Record<string, never>;
            };
        };
        readonly responses: {
            /** @description what stands on a rig, and whether a pull is armed, runs or is unfinished */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.RigDesk;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
    readonly "post-rigs-rig-stop": {
        readonly parameters: {
            readonly query?: never;
            readonly header?: never;
            readonly path: {
                readonly rig: string;
            };
            readonly cookie?: never;
        };
        readonly requestBody: {
            readonly content: {
                readonly "application/json": Record<string, never>;
            };
        };
        readonly responses: {
            /** @description what stands on a rig, and whether a pull is armed, runs or is unfinished */
            readonly 200: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/json": contract.RigDesk;
                };
            };
            /** @description a problem */
            readonly default: {
                headers: {
                    readonly [name: string]: unknown;
                };
                content: {
                    readonly "application/problem+json": components["schemas"]["Problem"];
                };
            };
        };
    };
}
