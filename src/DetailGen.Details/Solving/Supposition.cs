using DetailGen.Details.Parameters;
using DetailGen.Sections;
using DetailGen.Solver;
using Claim = DetailGen.Solver.Claim;

namespace DetailGen.Details.Solving;

/// <summary>Something that is supposed of two sizes: the first so many times is at most the second so many times. A size without a key is 1.</summary>
internal readonly record struct Supposed(string? Lesser, long LesserTimes, string? Greater, long GreaterTimes)
{
    public Claim Claim(Func<string, Linear> unknowns) => Side(Lesser, LesserTimes, unknowns) <= Side(Greater, GreaterTimes, unknowns);

    public bool Holds(Func<string, decimal> values) => (Lesser is null ? 1 : values(Lesser)) * LesserTimes <= (Greater is null ? 1 : values(Greater)) * GreaterTimes;

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
    /// <summary>Corrections whose sum stays below this share of U are left out (3 % in EN ISO 6946, from memory), less what the safe side of R may be off.</summary>
    public const decimal Small = 0.029m;

    private static readonly Dictionary<string, decimal> Empty = new(StringComparer.Ordinal);

    /// <summary>Nothing crosses the layers.</summary>
    public static readonly Supposition None = new([], Empty, Empty);

    private static readonly (int Along, int Across)[] Denser = [(2, 2), (2, 1), (1, 2), (1, 1)];

    /// <summary>The most that fixings add to U, as a share of it: their layers together make up no more than the whole resistance.</summary>
    public decimal Most => Fixings.Count == 0 ? 0 : Fixings.Values.Max();

    public static IReadOnlyList<Supposition> Of(Situation situation, string element)
    {
        var layers = Resistances.Layers(situation, element).ToList();
        var bridged = layers.Where(layer => layer.Kind == LayerKind.Air && layer.Layer.Members is not null && layer.Material?.Conductivity is not null).ToList();
        var pierced = layers.Where(layer => layer.Kind == LayerKind.Solid && layer.Layer.Fixings is { } fixings && situation.MaterialIn(fixings.Slot) is not null).ToList();
        if (bridged.Count == 0 && pierced.Count == 0)
        {
            return [None];
        }

        decimal Worst(string key, bool greatest) => Bound(situation, key, greatest);
        decimal Usual(string key) => Assumed(situation, key);
        Dictionary<string, decimal> Kappas(Func<LayerFixings, Func<string, decimal>> values) => pierced.ToDictionary(
            layer => layer.Layer.Slot,
            layer => (decimal)layer.Layer.Fixings!.Share(situation.MaterialIn(layer.Layer.Fixings.Slot)!.Conductivity ?? 0, layer.Material!.Conductivity!.Value, values(layer.Layer.Fixings)), StringComparer.Ordinal);

        var all = new List<Supposition>
        {
            new([], bridged.ToDictionary(layer => layer.Layer.Slot, _ => 1m, StringComparer.Ordinal), Kappas(fixings => key => Worst(key, key == fixings.Count || key == fixings.Diameter.Key))),
        };
        var shares = bridged.ToDictionary(layer => layer.Layer.Slot, layer => Math.Min(1, Usual(layer.Layer.Members!.Value.Width) / Usual(layer.Layer.Members.Value.Centres)), StringComparer.Ordinal);
        var dabs = bridged.Select(layer => layer.Layer.Members!.Value)
            .Select(keys => new Supposed(keys.Width, (long)Usual(keys.Centres), keys.Centres, (long)Usual(keys.Width)));
        foreach (var times in Denser)
        {
            decimal Over(LayerFixings fixings, string key) => Math.Ceiling(Usual(key) / (key == fixings.Over.Along.Key ? times.Along : key == fixings.Over.Across.Key ? times.Across : 1));
            var sizes = pierced.Select(layer => layer.Layer.Fixings!).SelectMany(fixings => fixings.Keys.Select(key => key == fixings.Count || key == fixings.Diameter.Key
                ? new Supposed(key, 1, null, (long)Usual(key))
                : new Supposed(null, (long)Over(fixings, key), key, 1)));
            all.Add(new([.. dabs, .. sizes], shares, Kappas(fixings => key => Over(fixings, key))));
            if (all[^1].Most <= Small)
            {
                break; // nothing is gained by supposing more
            }
        }

        return all[0].Most <= Small && bridged.Count == 0 ? [all[0]] : all;
    }

    // what the size will be if nothing speaks against it
    private static decimal Assumed(Situation situation, string key)
    {
        var parameter = situation.Size(key)!;
        return (situation.Preset.Set.FirstOrDefault(given => given.Key == key) ?? situation.Preset.Prefer.FirstOrDefault(given => given.Key == key))?.Value.Number
            ?? situation.Usual(parameter)?.Number ?? parameter.Domain!.From;
    }

    private static decimal Bound(Situation situation, string key, bool greatest) => greatest ? situation.Size(key)!.Domain!.To : situation.Size(key)!.Domain!.From;
}
