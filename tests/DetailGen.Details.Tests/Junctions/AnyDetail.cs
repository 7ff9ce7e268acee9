using CsCheck;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>Details of any kind and size.</summary>
internal static class AnyDetail
{
    /// <summary>A pairing with any choices, and a wish for any size of its domain for a fifth of the sizes.</summary>
    public static readonly Gen<Preset> Presets =
        from pairing in Gen.Int[0, 7].Select(index => Shipped.Pairings.ElementAt(index))
        from seed in Gen.Int[0, int.MaxValue]
        select Wishing(Shipped.Preset(pairing.Junction, pairing.Wall, pairing.Roof), new Random(seed));

    public static string Told(Preset preset) =>
        $"{preset.Junction.Id} {preset.Wall.Id} {preset.Roof.Id} {string.Join(", ", preset.Set.Concat(preset.Prefer).Select(given => given.Key + "=" + given.Value))}";

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
