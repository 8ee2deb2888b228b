/** The trainer's cards, asked and answered: scenario and its answer → a page each. */
import type { Ask } from '../question.js';
import { scenarioStudy } from '../size/scenario-study.js';
import { trainerCards } from './cards.js';
import { slowerClearing, storageOf } from './facts.js';
import type { cards } from './head.js';

/** Days watched for the busiest hour on the machine top. */
const DAYS_WATCHED = 100;

export const ask: Ask<typeof cards> = async ({ opened, runner, context, letter }) => {
  const { scenario } = opened;
  const options = letter?.options ?? {};
  const { answer } = await scenarioStudy(opened, runner, { ...options, watch: DAYS_WATCHED });
  const slower = await slowerClearing(
    scenario,
    runner,
    options.seed === undefined ? {} : { seed: options.seed },
  );
  const made = trainerCards({
    scenario,
    answer,
    context,
    slower,
    storage: storageOf(scenario, answer),
  });
  return {
    ok: true,
    value: {
      json: made.map(({ id, title }) => ({ id, title })),
      blocks: [],
      pages: made.map(({ html }) => html),
    },
  };
};
