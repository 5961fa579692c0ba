import { RowHead, Table, Td, Th, Tr } from '../../_ui/table';
import { STATE_WORDS } from '../../_ui/words';
import { checkLabel } from '#lib/foods/check-label';
import { foodEnergyReason } from '#lib/foods/energy-remark';
import { cellOf, type Food, type FoodVersion } from '#lib/foods/food';
import { amountRange, BASIS_WORDS } from '#lib/foods/label-column';
import { panelNutrients, TABLE_NUTRIENTS } from '#lib/foods/label-panel';
import { refuseText } from '#lib/foods/refuse-words';
import { cellInterval } from '#lib/foods/label-rounding';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { cellShown } from '#lib/foods/read-cell';
import { printedText } from '#lib/units/printed';
import { printedGramsTyped } from '#lib/units/read-typed';

const RULE_WORDS = {
  us: 'rounded by 21 CFR 101.9(c)',
  eu: 'rounded by the EU guidance of 2012',
  asPrinted: 'digits as printed',
} as const;

/** Every value of a food with its digits, and who says so. A blank reads "no value" and never 0. */
export function FoodValues({ food }: { readonly food: Food }) {
  const { version } = food;
  // An imported product has the numbers of its label, too.
  const ranges = food.kind === 'label' || version.basis === 'serving';
  const nutrients = ranges ? statedFirst(version) : TABLE_NUTRIENTS;
  const second = version.secondColumn;
  const head = (
    <>
      <Th>nutrient</Th>
      <Th number>{BASIS_WORDS[version.basis]}</Th>
      {second && <Th number>{BASIS_WORDS[second.basis]}</Th>}
      <Th>unit</Th>
      {ranges && <Th>stands for</Th>}
    </>
  );
  return (
    <section aria-labelledby="values">
      <h2 id="values">Values</h2>
      <p className="mt-1 text-soft">
        <SourceText version={version} />
      </p>
      <Serving version={version} />
      <Remarks food={food} />
      <div className="mt-3 max-w-xl">
        <Table caption={`Values of ${food.name}`} head={head} tight>
          {nutrients.map((nutrient) => {
            const cell = cellOf(version.values, nutrient);
            return (
              <Tr key={nutrient} open={cell.kind === 'missing'}>
                <RowHead>{NUTRIENTS[nutrient].label}</RowHead>
                <Td number>{cellShown(cell)}</Td>
                {second && <Td number>{cellShown(cellOf(second.values, nutrient))}</Td>}
                <Td>{NUTRIENTS[nutrient].unit}</Td>
                {ranges && <Td>{rangeWords(version, nutrient)}</Td>}
              </Tr>
            );
          })}
        </Table>
      </div>
    </section>
  );
}

/** The true amounts that a label's value allows, both columns taken together, in its first column's basis. */
function rangeWords(version: FoodVersion, nutrient: Nutrient): string {
  const interval = cellInterval(version, nutrient);
  return interval ? amountRange(interval, NUTRIENTS[nutrient].unit) : '';
}

/** The panel of the label, and after it whatever else the version states. */
function statedFirst(version: FoodVersion): readonly Nutrient[] {
  const panel = panelNutrients(version.rule);
  const stated = TABLE_NUTRIENTS.filter((name) => cellOf(version.values, name).kind !== 'missing');
  return [...new Set([...panel, ...stated])];
}

/** Source, release and number of a version, and how its digits are to be read. */
export function SourceText({ version }: { readonly version: FoodVersion }) {
  const source = [version.source, version.release, version.sourceNo].filter(Boolean).join(' ');
  const facts = [
    source,
    version.dateRead && `read ${version.dateRead}`,
    RULE_WORDS[version.rule],
    version.carbBasis === 'total' ? 'fibre inside carbohydrate' : 'fibre beside carbohydrate',
    `holds for it ${STATE_WORDS[version.state]}`,
  ];
  return <>{facts.filter(Boolean).join(' · ')}</>;
}

function Serving({ version }: { readonly version: FoodVersion }) {
  const { serving, refuse, factors } = version;
  const amounts = [
    serving?.massMg != null && `${printedGramsTyped(serving.massMg, serving.decimals)} g`,
    serving?.volumeMl != null && `${serving.volumeMl} ml`,
  ].filter(Boolean);
  const stated =
    factors &&
    (['protein', 'fat', 'carbohydrate', 'nitrogen'] as const).flatMap((name) => {
      const factor = factors[name];
      return factor ? [`${name} ${printedText(factor)}`] : [];
    });
  return (
    <dl className="mt-2">
      {serving && (
        <Fact name="Serving">
          {[serving.text, amounts.join(', ')].filter(Boolean).join(': ')}
          {serving.perPack != null && `, ${serving.perPack} in a pack`}
        </Fact>
      )}
      {refuse && (
        <Fact name="Peel and trim">
          {refuseText(refuse) ?? 'none'}
          {refuse.inValues && '; the values are for it as bought, with this in it'}
        </Fact>
      )}
      {stated && stated.length > 0 && (
        <Fact name="Energy factors, kcal per g">{stated.join(', ')}</Fact>
      )}
    </dl>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div className="flex gap-2">
      <dt className="text-soft">{name}:</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** What cannot be and was kept, with the reason; and what nobody has looked at yet. */
function Remarks({ food }: { readonly food: Food }) {
  const { version } = food;
  const open = checkLabel(version);
  const reason = foodEnergyReason(food);
  if (version.kept.length === 0 && open.length === 0) return null;
  return (
    <ul className="mt-3 border-l-[6px] border-hand pl-3">
      {open.map(({ path, code, message }) => (
        <li key={`${path} ${code}`}>{message}</li>
      ))}
      {reason && <li>{reason}</li>}
      {version.kept.map((kept) => (
        <li key={kept.code}>
          Kept although it cannot be ({kept.code.replaceAll('-', ' ')}): {kept.reason}
        </li>
      ))}
    </ul>
  );
}

/** What a spoon, a cup or a piece of it weighs. */
export function Measures({ food }: { readonly food: Food }) {
  if (food.measures.length === 0) return null;
  return (
    <section aria-labelledby="measures" className="mt-8">
      <h2 id="measures">Weights of measures</h2>
      <ul className="mt-2">
        {food.measures.map((measure) => (
          <li key={measure.id} className="border-b border-line py-1">
            {measure.qtyNum}
            {measure.qtyDen === 1 ? '' : `/${measure.qtyDen}`} {measure.name}:{' '}
            {printedGramsTyped(measure.massMg, measure.digits)} g{' '}
            <span className="text-fine text-soft">{measure.source}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
