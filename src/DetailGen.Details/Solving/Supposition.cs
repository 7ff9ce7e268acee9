using DetailGen.Details.Parameters;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;
using DetailGen.Solver;
using Claim = DetailGen.Solver.Claim;

namespace DetailGen.Details.Solving;

/// <summary>Something that is supposed of two sizes: the first so many times is at most the second so many times. A size without a key is 1.</summary>
internal readonly record struct Supposed(string? Lesser, long LesserTimes, string? Greater, long GreaterTimes)
{
    public Claim Claim(Func<string, Linear> unknowns) => Side(Lesser, LesserTimes, unknowns) <= Side(Greater, GreaterTimes, unknowns);

    private static Linear Side(string? key, long times, Func<string, Linear> unknowns) => key is null ? times : unknowns(key) * times;
}

/// <summary>
/// What is supposed of sizes that cannot stand in a sum: the share of an air layer that dabs take, and how much metal goes through a layer. Where it holds, the
/// figures that go with it are on the safe side. The usual comes last; the first supposes nothing and takes the worst that the domains hold.
/// </summary>
/// <param name="Shares">Of the area, by slot of the bridged air layer.</param>
/// <param name="Fixings">κ by slot of the pierced layer: fixings add at most κ·R₁/R to U, as a share of it.</param>
internal sealed record Supposition(IReadOnlyList<Supposed> Sizes, IReadOnlyDictionary<string, decimal> Shares, IReadOnlyDictionary<string, decimal> Fixings)
{
    /// <summary>Corrections whose sum stays below this share of U are left out (EN ISO 6946, from memory).</summary>
    public const decimal LeftOut = 0.03m;

    /// <summary>What is surely left out: <see cref="LeftOut"/> less what the safe side of R may be off.</summary>
    public const decimal Small = 0.029m;

    private static readonly Dictionary<string, decimal> Empty = new(StringComparer.Ordinal);

    /// <summary>Nothing crosses the layers.</summary>
    public static readonly Supposition None = new([], Empty, Empty);

    private static readonly (int Along, int Across)[] Denser = [(2, 2), (2, 1), (1, 2), (1, 1)];

    /// <summary>The most that fixings add to U, as a share of it: their layers together make up no more than the whole resistance.</summary>
    public decimal Most => Fixings.Count == 0 ? 0 : Fixings.Values.Max();

    public static IReadOnlyList<Supposition> Of(Situation situation, string element)
    {
        var (bridged, pierced) = Crossed(situation, element);
        if (bridged.Count == 0 && pierced.Count == 0)
        {
            return [None];
        }

        decimal Worst(string key, bool greatest) => Bound(situation, key, greatest);
        decimal Usual(string key) => Assumed(situation, key);

        var all = new List<Supposition>
        {
            new([], bridged.ToDictionary(layer => layer.Slot, _ => 1m, StringComparer.Ordinal), Kappas(situation, pierced, fixings => key => Worst(key, key == fixings.Count || key == fixings.Diameter.Key))),
        };
        var shares = SharesOf(bridged, Usual);
        var dabs = bridged.Select(layer => layer.Members!.Value)
            .Select(keys => new Supposed(keys.Width, (long)Usual(keys.Centres), keys.Centres, (long)Usual(keys.Width)));
        foreach (var times in Denser)
        {
            decimal Over(LayerFixings fixings, string key) => Math.Ceiling(Usual(key) / (key == fixings.Over.Along.Key ? times.Along : key == fixings.Over.Across.Key ? times.Across : 1));
            var sizes = pierced.Select(row => row.Layer.Fixings!).SelectMany(fixings => fixings.Keys.Select(key => key == fixings.Count || key == fixings.Diameter.Key
                ? new Supposed(key, 1, null, (long)Usual(key))
                : new Supposed(null, (long)Over(fixings, key), key, 1)));
            all.Add(new([.. dabs, .. sizes], shares, Kappas(situation, pierced, fixings => key => Over(fixings, key))));
            if (all[^1].Most <= Small)
            {
                break; // nothing is gained by supposing more
            }
        }

        return all[0].Most <= Small && bridged.Count == 0 ? [all[0]] : all;
    }

    /// <summary>Dabs and fixings as they are, where every size is known: then nothing need be supposed.</summary>
    public static Supposition Built(Situation situation, string element, IFacts solved)
    {
        var (bridged, pierced) = Crossed(situation, element);
        decimal Size(string key) => solved.Find(key).Number;
        return new([], SharesOf(bridged, Size), Kappas(situation, pierced, _ => Size));
    }

    // air layers with dabs, and layers that metal goes through
    private static (List<ResistanceLayer> Bridged, List<(ResistanceLayer Layer, double Conductivity)> Pierced) Crossed(Situation situation, string element)
    {
        var layers = Resistances.Layers(situation, element).ToList();
        return (
            [.. layers.Where(row => row.Kind == LayerKind.Air && row.Layer.Members is not null && row.Material?.Conductivity is not null).Select(row => row.Layer)],
            [.. layers.Where(row => row.Kind == LayerKind.Solid && row.Layer.Fixings is { } fixings && situation.MaterialIn(fixings.Slot) is not null).Select(row => (row.Layer, row.Material!.Conductivity!.Value))]);
    }

    private static Dictionary<string, decimal> SharesOf(List<ResistanceLayer> bridged, Func<string, decimal> sizes) => bridged.ToDictionary(
        layer => layer.Slot, layer => Math.Min(1, sizes(layer.Members!.Value.Width) / sizes(layer.Members.Value.Centres)), StringComparer.Ordinal);

    private static Dictionary<string, decimal> Kappas(Situation situation, List<(ResistanceLayer Layer, double Conductivity)> pierced, Func<LayerFixings, Func<string, decimal>> values) => pierced.ToDictionary(
        row => row.Layer.Slot, row => (decimal)row.Layer.Fixings!.Share(situation.MaterialIn(row.Layer.Fixings.Slot)!.Conductivity ?? 0, row.Conductivity, values(row.Layer.Fixings)), StringComparer.Ordinal);

    // what the size will be if nothing speaks against it
    private static decimal Assumed(Situation situation, string key)
    {
        var parameter = situation.Size(key)!;
        return (situation.Preset.Set.FirstOrDefault(given => given.Key == key) ?? situation.Preset.Prefer.FirstOrDefault(given => given.Key == key))?.Value.Number
            ?? situation.Usual(parameter)?.Number ?? parameter.Domain!.From;
    }

    private static decimal Bound(Situation situation, string key, bool greatest) => greatest ? situation.Size(key)!.Domain!.To : situation.Size(key)!.Domain!.From;
}
