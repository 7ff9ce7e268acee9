using CsCheck;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Junctions;

public class AnySizesTests
{
    /// <summary>A pairing with any choices, and a wish for any size of its domain for a fifth of the sizes.</summary>
    internal static readonly Gen<Preset> Details =
        from pairing in Gen.Int[0, 7].Select(index => Shipped.Pairings.ElementAt(index))
        from seed in Gen.Int[0, int.MaxValue]
        select Wishing(Shipped.Preset(pairing.Junction, pairing.Wall, pairing.Roof), new Random(seed));

    [Fact]
    public void Whatever_the_solver_allows_is_built_and_tiles()
    {
        var cases = Soak.Cases(200);
        var solved = 0;
        Details.Always(
            preset =>
            {
                if (Shipped.Solve(preset) is Solution.Solved sizes)
                {
                    Interlocked.Increment(ref solved);
                    try
                    {
                        Laws.Hold(SectionBuilder.Build(sizes));
                    }
                    catch (Exception fault)
                    {
                        if (Environment.GetEnvironmentVariable("SECTION_PICTURES") is { } folder)
                        {
                            Picture.Write(SectionBuilder.Build(sizes), Path.Combine(folder, "failed.json"));
                        }

                        throw new InvalidOperationException(fault.Message + "\n" + string.Join("; ", sizes.Values.Select(value => $"{value.Key} {value.Text}")), fault);
                    }
                }
            },
            cases: cases, print: preset => $"{preset.Junction.Id} {preset.Wall.Id} {preset.Roof.Id} {string.Join(", ", preset.Set.Concat(preset.Prefer).Select(given => given.Key + "=" + given.Value))}");
        Assert.True(solved > cases / 2, $"Only {solved} of {cases} could be solved.");
    }

    private static Preset Wishing(Preset preset, Random random)
    {
        var at = new Mark("test", 1, 1);
        var set = new List<Given>();
        var prefer = new List<Given>();
        foreach (var parameter in preset.Components.SelectMany(component => component.Parameters))
        {
            if (parameter.Unit == Unit.Choice)
            {
                // a contradiction between choices is no news; these two decide each other
                if (parameter.Key is not ("tray.discharge" or "upstand.top" or "roof.tied-to-wall") || random.Next(4) == 0)
                {
                    set.Add(new(parameter.Key, Setting.Choice(parameter.Options[random.Next(parameter.Options.Count)]), "", at, false));
                }
            }
            else if (random.Next(5) == 0)
            {
                var domain = parameter.Domain!;
                var number = domain.From + (random.NextInt64(0, ((domain.To - domain.From) / domain.Step) + 1) * domain.Step);
                prefer.Add(new(parameter.Key, Setting.Numeric(parameter.Unit, number), "", at, false));
            }
        }

        return preset with { Set = set, Prefer = prefer };
    }
}
