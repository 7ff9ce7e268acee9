using System.Collections.Immutable;

namespace DetailGen.Physics.Moisture;

/// <summary>A layer for the month by month calculation.</summary>
/// <param name="Resistance">Thermal, m²·K/W, 0 or more.</param>
/// <param name="AirEquivalent">sd in m, 0 or more.</param>
public sealed record VapourLayer(string Name, double Resistance, double AirEquivalent);

/// <summary>Water that is there at the start.</summary>
/// <param name="AfterLayer">Counts from 1 inside.</param>
/// <param name="Mass">g/m².</param>
public sealed record InitialWater(int AfterLayer, double Mass);

/// <summary>What is asked: a build-up from inside to outside in a climate.</summary>
/// <param name="LargestStrip">Layers are cut into equal strips of at most this resistance, m²·K/W.</param>
/// <param name="StartMonth">0 is January; null for the first month with condensation after one without.</param>
public sealed record CondensationCase(
    ImmutableArray<VapourLayer> Layers, double Rsi, double Rse, Climate Climate, double LargestStrip, ImmutableArray<InitialWater> Initial, int? StartMonth);

/// <summary>Whether water gathers, and whether it goes.</summary>
public enum MoistureVerdict
{
    Dry,
    Dries,
    Stays,
}

/// <summary>A year of condensing and drying.</summary>
/// <param name="StartMonth">0 is January; null when nothing ever condenses.</param>
/// <param name="Peak">Largest sum over the interfaces at the end of a month, g/m².</param>
/// <param name="Residual">After twelve months, g/m².</param>
/// <param name="DryAfter">Months from the start until the last water is gone; null when it stays or none came.</param>
/// <param name="Interfaces">Those that are ever wet, from inside.</param>
public sealed record CondensationYear(
    MoistureVerdict Verdict, int? StartMonth, double Peak, int? PeakMonth, double Residual, int? DryAfter, ImmutableArray<WetInterface> Interfaces)
{
    /// <summary>Water condenses in the start month and did in the month before it, so the year does not begin dry.</summary>
    public bool StartsAmidWet { get; init; }
}

/// <summary>A place that is wet at some time. Twelve numbers, January first, g/m².</summary>
/// <param name="AfterLayer">Counts from 1 inside; null inside a layer.</param>
/// <param name="AirEquivalent">sd in m from the inner face.</param>
public sealed record WetInterface(int? AfterLayer, double AirEquivalent, string Inside, string Outside, ImmutableArray<double> Change, ImmutableArray<double> Accumulated);

/// <summary>
/// Interstitial condensation month by month. Vapour flows along δ₀·dp/dsd; where it would pass saturation the pressure line is the greatest convex function of sd under the saturation
/// points and through the end pressures; a wet interface stays at saturation for the whole month. Gain = δ₀·(slope after − slope before).
/// </summary>
/// <remarks>ISO 13788:2012, interstitial condensation (clauses still to be read; method and constants from the notes of the check cases, which give them from memory).</remarks>
public static class Condensation
{
    /// <summary>δ₀ in kg/(m·s·Pa).</summary>
    private const double AirPermeability = 2e-10;

    /// <summary>g/m² in a month below which nothing is said to condense; rounding of a line that only touches saturation.</summary>
    private const double Nothing = 1e-9;

    /// <summary>The year from the start month on.</summary>
    /// <exception cref="ArgumentException">The layers let all vapour through (their sd sums to 0).</exception>
    public static CondensationYear Of(CondensationCase asked)
    {
        var nodes = Nodes(asked);
        if (!(nodes[^1].AirEquivalent > 0))
        {
            throw new ArgumentException("Layers without any resistance to vapour.", nameof(asked));
        }

        var condenses = Enumerable.Range(0, 12).Select(month => Rates(asked, nodes, month, new double[nodes.Length]).Any(mass => mass > Nothing)).ToArray();
        var (mass, change, accumulated) = (InitialMass(asked, nodes), new double[nodes.Length, 12], new double[nodes.Length, 12]);
        if (!condenses.Contains(true) && !(mass.Sum() > 0))
        {
            return new(MoistureVerdict.Dry, null, 0, null, 0, null, []);
        }

        var start = asked.StartMonth ?? (Array.FindIndex(condenses, wet => wet) < 0 || !condenses.Contains(false) ? 0 : FirstAfterDry(condenses));
        var totals = new double[12];
        for (var step = 0; step < 12; step++)
        {
            var month = (start + step) % 12;
            var rates = Rates(asked, nodes, month, mass);
            for (var i = 0; i < nodes.Length; i++)
            {
                var after = mass[i] + rates[i];
                after = after > Nothing ? after : 0;
                change[i, month] = after - mass[i];
                accumulated[i, month] = mass[i] = after;
            }

            totals[step] = mass.Sum();
        }

        return Year(asked, nodes, start, totals, change, accumulated) with { StartsAmidWet = asked.StartMonth is not null && condenses[start] && condenses[(start + 11) % 12] };
    }

    private static CondensationYear Year(CondensationCase asked, Node[] nodes, int start, double[] totals, double[,] change, double[,] accumulated)
    {
        var peak = totals.Max();
        var lastWet = Array.FindLastIndex(totals, total => total > 0);
        var ever = peak > 0 || asked.Initial.Any(water => water.Mass > 0);
        var verdict = !ever ? MoistureVerdict.Dry : totals[^1] > 0 ? MoistureVerdict.Stays : MoistureVerdict.Dries;
        ImmutableArray<double> Row(double[,] table, int i) => [.. Enumerable.Range(0, 12).Select(month => table[i, month])];
        return new(
            verdict, ever ? start : null, peak, peak > 0 ? (start + Array.IndexOf(totals, peak)) % 12 : null, totals[^1], verdict == MoistureVerdict.Dries ? lastWet + 2 : null,
            [
                .. nodes.Select((node, i) => (node, Change: Row(change, i), Accumulated: Row(accumulated, i)))
                    .Where(row => row.Change.Any(value => value != 0) || row.Accumulated.Any(value => value != 0))
                    .Select(row => new WetInterface(row.node.AfterLayer, row.node.AirEquivalent, row.node.Inside, row.node.Outside, row.Change, row.Accumulated)),
            ]);
    }

    private static int FirstAfterDry(bool[] wet) => Enumerable.Range(0, 12).First(month => wet[month] && !wet[(month + 11) % 12]);

    private static double[] InitialMass(CondensationCase asked, Node[] nodes)
    {
        var mass = new double[nodes.Length];
        foreach (var water in asked.Initial)
        {
            // Layers that let all vapour through share their place with a neighbour.
            var sd = asked.Layers.Take(water.AfterLayer).Sum(layer => layer.AirEquivalent);
            mass[Array.FindIndex(nodes, node => Math.Abs(node.AirEquivalent - sd) <= SamePlace)] += water.Mass;
        }

        return mass;
    }

    /// <summary>g/m² that each node would gain (or lose, if it had as much) in a month, with wet nodes held at saturation.</summary>
    private static double[] Rates(CondensationCase asked, Node[] nodes, int month, double[] mass)
    {
        var climate = asked.Climate;
        var total = asked.Rsi + asked.Layers.Sum(layer => layer.Resistance) + asked.Rse;
        var pressure = new double[nodes.Length];
        for (var i = 0; i < nodes.Length; i++)
        {
            pressure[i] = nodes[i].Resistances.Min(resistance => Saturation.Pressure(
                climate.InternalTemperature[month] + (climate.ExternalTemperature[month] - climate.InternalTemperature[month]) * (total > 0 ? resistance / total : 0.5)));
        }

        (pressure[0], pressure[^1]) = (climate.InternalPressure[month], climate.ExternalPressure[month]);
        List<int> line = [0];
        for (var i = 1; i < nodes.Length; i++)
        {
            while (line.Count > 1 && mass[line[^1]] == 0 && Slope(line[^2], line[^1]) >= Slope(line[^1], i))
            {
                line.RemoveAt(line.Count - 1); // it lies on or above the straight line: not saturated
            }

            line.Add(i);
        }

        var rates = new double[nodes.Length];
        for (var k = 1; k < line.Count - 1; k++)
        {
            rates[line[k]] = 1000 * AirPermeability * Month.Seconds(month) * (Slope(line[k], line[k + 1]) - Slope(line[k - 1], line[k]));
        }

        return rates;

        double Slope(int from, int to) => (pressure[to] - pressure[from]) / (nodes[to].AirEquivalent - nodes[from].AirEquivalent);
    }

    private const double SamePlace = 1e-12; // m

    /// <summary>A place where water can gather: between layers or strips. Places with the same sd are one; the coldest of them decides.</summary>
    /// <param name="Resistances">From inside air, m²·K/W, of all that share the place.</param>
    private sealed record Node(double AirEquivalent, ImmutableArray<double> Resistances, int? AfterLayer, string Inside, string Outside);

    private static Node[] Nodes(CondensationCase asked)
    {
        List<Node> nodes = [new(0, [asked.Rsi], null, asked.Layers[0].Name, asked.Layers[0].Name)];
        var (sd, resistance) = (0.0, asked.Rsi);
        for (var i = 0; i < asked.Layers.Length; i++)
        {
            var layer = asked.Layers[i];
            var strips = Math.Max(1, (int)Math.Ceiling(layer.Resistance / asked.LargestStrip - 1e-9));
            for (var strip = 1; strip <= strips; strip++)
            {
                var last = strip == strips;
                var node = new Node(
                    sd + layer.AirEquivalent * strip / strips, [resistance + layer.Resistance * strip / strips],
                    last ? i + 1 : null, layer.Name, last && i + 1 < asked.Layers.Length ? asked.Layers[i + 1].Name : layer.Name);
                if (node.AirEquivalent - nodes[^1].AirEquivalent > SamePlace)
                {
                    nodes.Add(node);
                }
                else
                {
                    nodes[^1] = nodes[^1] with
                    {
                        Resistances = [.. nodes[^1].Resistances, .. node.Resistances],
                        AfterLayer = node.AfterLayer ?? nodes[^1].AfterLayer,
                        Outside = node.Outside,
                    };
                }
            }

            (sd, resistance) = (sd + layer.AirEquivalent, resistance + layer.Resistance);
        }

        return [.. nodes];
    }
}
