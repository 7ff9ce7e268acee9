using CsCheck;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Junctions;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Solving;

/// <summary>The budget is meant for pathological input, not for what people may well ask.</summary>
public class ProvenTests
{
    internal static readonly Catalogue Whole =
        Catalogue.Of(Components.Load().All, StockLibrary.Load().All, MaterialLibrary.Load().Ids, [Trial.PackOf("uk")]).Value;

    /// <summary>A pairing with the shipped rules, any choices, some sizes set and some wished, anywhere in their domains; every fourth with a target.</summary>
    internal static readonly Gen<Preset> Details =
        from pairing in Gen.Int[0, Shipped.Pairings.Count() - 1].Select(index => Shipped.Pairings.ElementAt(index))
        from seed in Gen.Int[0, int.MaxValue]
        select Asking(Shipped.Preset(pairing.Junction, pairing.Wall, pairing.Roof), new Random(seed));

    [Fact]
    public void Hardly_any_detail_spends_the_budget()
    {
        var cases = Soak.Cases(60);
        int unproven = 0, unsettled = 0;
        Details.Always(
            preset =>
            {
                switch (DetailSolver.Solve(preset, Whole))
                {
                    case Solution.Solved solved when solved.Warnings.Contains(SolvingWords.NotTheBest):
                        Interlocked.Increment(ref unsettled);
                        break;
                    case Solution.NotProven:
                        Interlocked.Increment(ref unproven);
                        break;
                    default:
                        break;
                }
            },
            cases: cases, print: Told);
        // One of these 60 is not proven to be the best; of 450 others no more than two were either.
        Assert.True(unproven + unsettled <= Math.Max(1, cases / 200), $"Of {cases} details {unproven} were neither solved nor refuted, {unsettled} not proven to be the best.");
    }

    internal static string Told(Preset preset) =>
        $"{preset.Junction.Id} {preset.Wall.Id} {preset.Roof.Id} set {Written(preset.Set)} prefer {Written(preset.Prefer)} target {string.Join(", ", preset.Targets.Select(target => target.Key + "=" + target.Value))}";

    private static string Written(IEnumerable<Given> givens) => string.Join(", ", givens.Select(given => given.Key + "=" + given.Value));

    private static Preset Asking(Preset preset, Random random)
    {
        var at = new Mark("test", 1, 1);
        var set = new List<Given>();
        var prefer = new List<Given>();
        // few sizes set leave mostly what can be solved, many mostly contradictions
        var every = random.Next(4, 40);
        foreach (var parameter in preset.Components.SelectMany(component => component.Parameters))
        {
            if (parameter.Unit == Unit.Choice)
            {
                if (parameter.Key is not ("tray.discharge" or "upstand.top" or "roof.tied-to-wall") || random.Next(4) == 0)
                {
                    set.Add(new(parameter.Key, Setting.Choice(parameter.Options[random.Next(parameter.Options.Count)]), "", at, false));
                }

                continue;
            }

            var domain = parameter.Domain!;
            var number = domain.From + (random.NextInt64(0, ((domain.To - domain.From) / domain.Step) + 1) * domain.Step);
            var given = new Given(parameter.Key, Setting.Numeric(parameter.Unit, number), "", at, false);
            if (random.Next(every) == 0)
            {
                set.Add(given);
            }
            else if (random.Next(5) == 0)
            {
                prefer.Add(given);
            }
        }

        var asked = preset with { Set = set, Prefer = prefer, Rules = [new NamedPack("uk", Trial.At)] };
        return random.Next(4) > 0 ? asked : asked.To(random.Next(2) == 0 ? "roof.u-value" : "wall.u-value", random.Next(10, 31) / 100m);
    }
}
