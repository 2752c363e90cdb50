/** Words of what a campaign is: of its opening, its question, its rule and its plan. Part of the catalogue in text.ts. */
export const campaignText = {
  new: 'New campaign',
  newLead:
    'A campaign answers one question about chain. Write it down as it was asked, and say how it will be decided, before anything is known.',
  ask: 'Question and rule',
  askHow:
    'The rule is chosen before the first pull, so that no result can choose it. All of it may be mended until the plan is frozen.',
  open: 'Open the campaign',
  opening: (code: string) => `campaign ${code}`,
  afterwards:
    'The Brief opens next: there the products are entered with their claims, and the plan is made and frozen.',
  taken: (code: string) => `The record holds a campaign ${code} already. Choose another code.`,
  label: {
    campaign: 'Code',
    title: 'Title of the finding',
    question: 'Question',
    client: 'Who asked',
    laboratory: 'Laboratory and place',
    opened_on: 'Day of opening',
    decision_rule: 'Decision rule',
    coverage_factor: 'Coverage factor k',
    method: 'Method of the pulls',
    sampling: 'How the samples are chosen',
    table_speed_min_mm_per_min: 'Least table speed',
    table_speed_max_mm_per_min: 'Greatest table speed',
    marking: 'Marking on every page',
    pieces_per_product: 'Pieces of each product',
    order_seed: 'Seed of the order of pulls',
    blinding: 'Blind or open',
  },
  hint: {
    campaign: 'Short, as it stands on labels and in addresses: QUAY-2026. It is not changed later.',
    question: 'One question, in the words of who asked it: “Is this chain as strong as its mark says?”',
    client: 'Left empty it is told as not recorded.',
    coverage_factor: 'U = k u. Two is common practice.',
    method: 'Preload, grips, how the speed is held.',
    sampling: 'Where and how they are bought, so that nobody can say they were picked.',
    speed: 'In the loaded part of the pull.',
    marking: 'Only where every page must carry words, such as “invented demonstration data”.',
    order_seed: 'Anybody who has the seed draws the same order. Drawn once; typing one is the same as drawing it.',
    pieces_per_product: 'The table below says what so many can show.',
  },
  rules: {
    guarded: {
      label: 'Guarded acceptance',
      words: (risk: string | null) =>
        `A value conforms when it clears its limit by its expanded uncertainty U, does not conform when it fails it by U, and is inconclusive between.${risk === null ? '' : ` Of values just accepted not more than ${risk} lie beyond the limit in truth.`} Choose it where a supplier may attack the verdict. It costs inconclusive results.`,
    },
    simple: {
      label: 'Simple acceptance',
      words:
        'A value conforms when it lies inside its limit, whatever its uncertainty. Near the limit the verdict is wrong as often as one time in two. Choose it where the uncertainty is small against what matters, or where the agreement says so.',
    },
  },
  blind: {
    open: {
      label: 'Open',
      words: 'Products and suppliers are named on every screen from the first day.',
    },
    blind: {
      label: 'Blind',
      words:
        'From the freezing of the plan to the unblinding no screen and no page names product, supplier or sample. Pieces carry codes drawn by lot, so whoever gauges, pulls and examines does not know whose chain it is. Cut and label all pieces before the freeze.',
    },
  },
} as const;
