import { describe, expect, test } from 'vitest';
import { propose } from '#lib/method/proposal';
import { readMethod } from '#lib/method/read-method';
import { stepsToAdd } from '#lib/method/steps-to-add';
import { animalFoods, type AnimalFood } from '#lib/shoot/may-go-in-raw';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';

function offered(text: string, foods: readonly AnimalFood[] | null = null) {
  const method = readMethod(text, 'EU');
  if (!method.ok) throw new Error(JSON.stringify(method.problems));
  return propose(method.value, { ovens: [], segment: { washUpS: 600 }, region: 'EU', foods });
}
const contacts = (text: string, foods: readonly AnimalFood[] | null = null) =>
  offered(text, foods).steps.map(({ contact }) => contact && `${contact.contact} ${contact.words}`);
const FOODS = [
  aFood('turkey', {}, { name: 'Turkey, breast, raw' }),
  aFood('tin', {}, { name: 'Fish, tuna, canned in water, drained solids' }),
];
/** The ingredients of a dish with these lines. */
const dishOf = (...lines: readonly string[]) => {
  const recipe = aRecipe(
    'r',
    lines.map((text, index) => {
      const of = text.startsWith('big pack') ? 'turkey' : text.startsWith('tuna') ? 'tin' : null;
      const id = `l${index}`;
      return of === null ? aLine(id, null, { text }) : grams(id, of, 300, { text });
    }),
  );
  return animalFoods(aFile([aDish('d', recipe)], FOODS), recipe);
};

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
    // Cuts are said without the animal too.
    ['Trim the thighs.', ['rawAnimal thigh']],
    ['Score the drumsticks.', ['rawAnimal drumstick']],
    ['Halve the wings at the joint.', ['rawAnimal wing']],
    ['Butterfly the breasts.', ['rawAnimal breast']],
    ['Slice the pork loin.', ['rawAnimal pork']],
    // Two steps in one sentence: what is cut is in the pan next.
    ['Slice the thighs and sear them for 5 minutes.', ['rawAnimal thigh']],
    // Neither: vegetables that are cooked later, and what only sounds like meat or egg.
    ['Chop the onions.', [null]],
    ['Whisk in the chicken stock.', [null]],
    ['Slice the eggplant.', [null]],
    ['Stir in the fish sauce.', [null]],
    ['Toss the egg noodles in the oil.', [null]],
    ['Flake the smoked mackerel over the toast.', [null]],
    ['Chop the hard-boiled eggs.', [null]],
    ['Shape the vegan sausages.', [null]],
    ['Slice the cauliflower steaks.', [null]],
    ['Shred the cooked chicken thighs.', [null]],
    ['Slice the smoked, flaked trout fillets.', [null]],
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

  test('“it” and “them” are the food of the step before', () => {
    expect(contacts('Trim the pork. Rub it with the salt.')).toEqual([
      'rawAnimal pork',
      'rawAnimal pork',
    ]);
    expect(contacts('Trim the pork. Chop the onions. Rub them with the salt.').at(-1)).toBeNull();
  });

  test('heat on one food leaves another of the same cut raw', () => {
    expect(
      contacts(
        'Season the chicken fillets. Season the salmon fillets. Fry the salmon for 6 minutes. Slice the chicken.',
      ).at(-1),
    ).toBe('rawAnimal chicken');
  });

  test('a step that runs by itself is none, and says that the hands touch raw food before it', () => {
    const [step] = offered('Cut the chicken into strips and marinate for 30 minutes.').steps;
    expect(step?.contact).toBeNull();
    expect(step?.remark).toMatch(/^Your hands touch chicken before it runs by itself/);
  });
});

describe('which food a word means is asked of the dish', () => {
  test.each([
    ['a tin', ['2 tins salmon in brine', '4 crackers'], 'Flake the salmon.', 'readyToEat salmon'],
    ['a can with its weight', ['1 can (120 g) of crab'], 'Drain the crab.', 'readyToEat crab'],
    ['a food that is tinned', ['tuna, drained'], 'Flake the tuna.', 'readyToEat tuna'],
    ['cooked before', ['300 g rotisserie chicken'], 'Shred the chicken.', 'readyToEat chicken'],
    ['raw by its words', ['8 thighs of chicken'], 'Skin the thighs.', 'rawAnimal thigh'],
    ['raw by its food alone', ['big pack rosettes'], 'Cut the rosettes.', 'rawAnimal rosette'],
    ['a cut of its food', ['big pack, cubed'], 'Slice the breast.', 'rawAnimal breast'],
    ['on no list of methods', ['400 g sardines'], 'Gut the sardines.', 'rawAnimal sardine'],
    // Stock is no chicken: the word is not the ingredient's.
    ['only called so', ['500 ml chicken stock'], 'Cut the chicken.', 'rawAnimal chicken'],
    [
      'a fresh one beside a tin',
      ['1 tin tuna', '200 g fresh tuna'],
      'Cut the tuna.',
      'rawAnimal tuna',
    ],
    [
      'two in one line',
      ['1 tin of beans, 4 chicken legs'],
      'Cut the chicken.',
      'rawAnimal chicken',
    ],
  ] as const)('%s', (_, lines, text, told) => {
    expect(contacts(text, dishOf(...lines))).toEqual([told]);
  });

  test('meat is followed by either of its names', () => {
    const text = 'Trim the thighs. Roast the thighs for 40 minutes at 200 °C. Shred the chicken.';
    expect(contacts(text, dishOf('8 chicken thighs')).at(-1)).toBe('readyToEat chicken');
  });

  test('what no heat reaches, in a dish without raw food, is eaten as it is', () => {
    const cold = dishOf('200 g quark', '1 tin tuna');
    expect(contacts('Stir the quark. Fold in the tuna.', cold)).toEqual([
      'readyToEat stir',
      'readyToEat tuna',
    ]);
    expect(contacts('Stir the quark. Bake for 20 minutes at 180 °C.', cold)[0]).toBeNull();
    expect(contacts('Stir the quark.', dishOf('200 g quark', '1 egg'))).toEqual([null]);
    expect(contacts('Stir the quark.')).toEqual([null]);
  });
});

test('raw food that is handled before it cooks by itself gets a step of its own, and so its clean-down', () => {
  const proposal = offered('Halve the wings and roast for 40 minutes at 200 °C.');
  expect(proposal.shown.map(({ title }) => title)).toContain('Clean-down');
  const added = stepsToAdd(
    proposal,
    {
      steps: proposal.steps.map(({ key, lowS, usualS, highS }) => {
        return { key, lowS, usualS, highS, ovenMilliC: 200_000, keepsContact: true };
      }),
      rules: new Map([['rawFirst', 240]]),
    },
    true,
  );
  expect(
    added.steps.map(({ title, contact, hands, usualS }) => [title, contact, hands, usualS]),
  ).toEqual([
    ['Raw wing by hand', 'rawAnimal', true, 240],
    ['Roast', null, false, 2400],
  ]);
  expect(added.ties.map(({ from, to }) => [from, to])).toEqual([
    ['last', 'rawFirst-0'],
    ['rawFirst-0', '0'],
  ]);
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
