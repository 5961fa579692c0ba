import { describe, expect, test } from 'vitest';
import { propose } from '#lib/method/proposal';
import { readMethod } from '#lib/method/read-method';
import { stepsToAdd } from '#lib/method/steps-to-add';

function offered(text: string) {
  const method = readMethod(text, 'EU');
  if (!method.ok) throw new Error(JSON.stringify(method.problems));
  return propose(method.value, { ovens: [], segment: { washUpS: 600 }, region: 'EU' });
}
const contacts = (text: string) =>
  offered(text).steps.map(({ contact }) => contact && `${contact.contact} ${contact.words}`);

// Sentences invented here; what is raw animal food: FDA Food Code 2022, 3-302.11(A).
describe('what the hands touch, read from the words', () => {
  test.each([
    ['Cut the chicken into strips.', ['rawAnimal chicken']],
    ['Shape the mince into eight balls.', ['rawAnimal mince']],
    ['Mix the minced beef with the parsley.', ['rawAnimal beef']],
    ['Beat the eggs with a pinch of salt.', ['rawAnimal egg']],
    ['Pat the salmon fillets dry.', ['rawAnimal salmon']],
    ['Peel the prawns.', ['rawAnimal prawn']],
    ['Toss the salad.', ['readyToEat salad']],
    ['Slice the strawberries.', ['readyToEat strawberries']],
    ['Garnish with the chives.', ['readyToEat garnish']],
    ['Plate up while hot.', ['readyToEat plate']],
    // Neither: vegetables that are cooked later, and what only sounds like meat or egg.
    ['Chop the onions.', [null]],
    ['Whisk in the chicken stock.', [null]],
    ['Slice the eggplant.', [null]],
    ['Stir in the fish sauce.', [null]],
    ['Toss the egg noodles in the oil.', [null]],
    ['Flake the smoked mackerel over the toast.', [null]],
    ['Chop the hard-boiled eggs.', [null]],
    ['Shape the vegan sausages.', [null]],
  ])('%s', (text, told) => {
    expect(contacts(text)).toEqual(told);
  });

  test('meat is raw until a heat has reached it, and eaten as it is from then on', () => {
    expect(
      contacts(
        'Season the chicken. Roast for 40 minutes at 200 °C. Rest for 10 minutes. Carve the chicken.',
      ),
    ).toEqual(['rawAnimal chicken', null, null, 'readyToEat chicken']);
    // The onions' heat is not the chicken's.
    expect(
      contacts('Cut the chicken. Fry the onions for 5 minutes. Season the chicken.').filter(
        Boolean,
      ),
    ).toEqual(['rawAnimal chicken', 'rawAnimal chicken']);
    expect(
      contacts('Cut the chicken. Roast the tray for 40 minutes. Slice the chicken.').at(-1),
    ).toBe('readyToEat chicken');
  });

  test('where raw and ready-to-eat food are in one step it is raw', () => {
    expect(contacts('Mix the mince with the cucumber.')).toEqual(['rawAnimal mince']);
  });

  test('a step that runs by itself is none, and says that the hands touch raw food before it', () => {
    const [step] = offered('Cut the chicken into strips and marinate for 30 minutes.').steps;
    expect(step?.contact).toBeNull();
    expect(step?.remark).toMatch(/^Your hands touch chicken before it runs by itself/);
  });
});

test('a contact is added with its step, and not where it was switched off; the plan’s clean-down is told', () => {
  const proposal = offered('Cut the chicken. Roast for 40 minutes at 200 °C.');
  expect(proposal.shown.map(({ title }) => title)).toContain('Clean-down');
  expect(offered('Chop the onions.').shown.map(({ title }) => title)).not.toContain('Clean-down');
  const added = (keepsContact: boolean) =>
    stepsToAdd(
      proposal,
      {
        steps: proposal.steps.map(({ key, lowS, usualS, highS }) => {
          return { key, lowS, usualS, highS, ovenMilliC: 200_000, keepsContact };
        }),
        rules: new Map(),
      },
      false,
    ).steps.map(({ contact }) => contact);
  expect(added(true)).toEqual(['rawAnimal', null]);
  expect(added(false)).toEqual([null, null]);
});
