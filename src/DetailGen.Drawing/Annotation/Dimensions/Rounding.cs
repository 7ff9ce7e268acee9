using System.Globalization;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation.Dimensions;

/// <summary>A size as the sheet shows it.</summary>
/// <param name="Shown">mm.</param>
/// <param name="Model">What it stands for, mm: the measure less the sheets that a chain leaves out.</param>
internal sealed record Figure(Measure Measure, double Shown, double Model)
{
    internal string Text => Shown.ToString("0.#", CultureInfo.InvariantCulture) + (Measure.Text.Length == 0 ? "" : " " + Measure.Text);
}

/// <summary>Figures that add up: whole millimetres, exact halves kept, the rest shared out to the largest remainders.</summary>
internal static class Rounding
{
    /// <summary>Sheets thinner than this are not dimensioned, and chains leave them out; true mm.</summary>
    internal const double Thin = 5;

    private const double Exact = 0.005;

    /// <summary>The measures of one chain, thin ones left out, in the order given.</summary>
    internal static IReadOnlyList<Figure> Of(IReadOnlyList<Measure> chain)
    {
        var measures = chain.Where(measure => measure.Value >= Thin).ToArray();
        var members = measures.Select(whole => Members(whole, measures)).ToArray();
        var model = new double[measures.Length];
        var shown = new double[measures.Length];
        var done = new bool[measures.Length];
        for (var i = 0; i < measures.Length; i++)
        {
            model[i] = members[i].Count == 0 ? measures[i].Value : members[i].Sum(member => measures[member].Value);
            (shown[i], done[i]) = (Nearest(measures[i].Value), false);
        }

        // The longest sums first: what they share out is settled for the shorter ones inside.
        foreach (var whole in Enumerable.Range(0, measures.Length).Where(i => members[i].Count > 0).OrderByDescending(i => measures[i].Value).ThenBy(i => i))
        {
            var open = members[whole].Where(member => !done[member]).ToArray();
            // A whole that is exact, such as a given height, is shown as it is; what its parts have to spare or lack is shared among them.
            var isExact = Math.Abs(measures[whole].Value - Nearest(measures[whole].Value)) <= Exact && Math.Abs(measures[whole].Value - model[whole]) <= Exact;
            if (!isExact || !Fit(Nearest(measures[whole].Value), members[whole], open, measures, shown))
            {
                Share(open, measures, shown);
            }

            foreach (var member in members[whole])
            {
                done[member] = true;
            }

            shown[whole] = Math.Round(members[whole].Sum(member => shown[member]), 6);
        }

        return [.. measures.Select((measure, i) => new Figure(measure, shown[i], model[i]))];
    }

    /// <summary>The nearest whole millimetre, or the half where it is one.</summary>
    internal static double Nearest(double value)
    {
        var half = Math.Round(value * 2, MidpointRounding.AwayFromZero) / 2;
        return Math.Abs(value - half) <= Exact ? half : Math.Floor(value + 0.5);
    }

    /// <summary>The shortest measures that together fill the whole but for thin sheets; none where they do not.</summary>
    internal static IReadOnlyList<int> Members(Measure whole, IReadOnlyList<Measure> chain)
    {
        var (low, high) = Ends(whole);
        var inside = Enumerable.Range(0, chain.Count)
            .Where(i => chain[i] != whole && chain[i].Axis == whole.Axis && Ends(chain[i]) is var (a, b) && a >= low - 0.01 && b <= high + 0.01 && b - a < high - low - Thin / 2)
            .OrderBy(i => Ends(chain[i]).Low).ThenBy(i => chain[i].Value).ThenBy(i => i);
        var members = new List<int>();
        var reached = low;
        foreach (var i in inside)
        {
            var (from, to) = Ends(chain[i]);
            if (from < reached - 0.01)
            {
                continue; // a longer one over the same stretch
            }

            if (from - reached >= Thin)
            {
                return [];
            }

            members.Add(i);
            reached = to;
        }

        return members.Count > 1 && high - reached < Thin ? members : [];
    }

    internal static (double Low, double High) Ends(Measure measure)
    {
        var (a, b) = measure.Axis == Axis.Horizontal ? (measure.From.X, measure.To.X) : (measure.From.Y, measure.To.Y);
        return (Math.Min(a, b), Math.Max(a, b));
    }

    // In whole millimetres, or in halves where the exact parts leave a half; false where that would move one by more than half a millimetre.
    private static bool Fit(double whole, IReadOnlyList<int> members, int[] open, Measure[] measures, double[] shown)
    {
        var loose = Loose(open, measures);
        var rest = whole - members.Where(member => !loose.Contains(member)).Sum(member => shown[member]);
        var perMillimetre = Math.Abs(rest - Math.Round(rest)) < 1e-6 ? 1 : 2;
        var units = loose.Select(i => Math.Floor(measures[i].Value * perMillimetre)).ToArray();
        var missing = (int)Math.Round(rest * perMillimetre - units.Sum());
        if (loose.Length == 0 || missing < 0 || missing > loose.Length)
        {
            return false;
        }

        RoundUp(missing, loose, units, perMillimetre, measures);
        if (Enumerable.Range(0, loose.Length).Any(k => Math.Abs(units[k] / perMillimetre - measures[loose[k]].Value) > 0.5))
        {
            return false;
        }

        for (var k = 0; k < loose.Length; k++)
        {
            shown[loose[k]] = units[k] / perMillimetre;
        }

        return true;
    }

    private static int[] Loose(int[] open, Measure[] measures) => [.. open.Where(i => Math.Abs(measures[i].Value - Nearest(measures[i].Value)) > Exact)];

    // The largest remainders first.
    private static void RoundUp(int missing, int[] loose, double[] units, double perMillimetre, Measure[] measures)
    {
        foreach (var k in Enumerable.Range(0, loose.Length).OrderByDescending(k => Math.Round(measures[loose[k]].Value * perMillimetre - units[k], 9)).ThenBy(k => k).Take(missing))
        {
            units[k]++;
        }
    }

    private static void Share(int[] open, Measure[] measures, double[] shown)
    {
        var loose = Loose(open, measures);
        if (loose.Length == 0)
        {
            return;
        }

        // Whole millimetres where none is more than half a millimetre off, else tenths.
        Share(loose, 1, measures, shown);
        if (Array.Exists(loose, i => Math.Abs(shown[i] - measures[i].Value) > 0.5))
        {
            Share(loose, 10, measures, shown);
        }
    }

    private static void Share(int[] loose, double perMillimetre, Measure[] measures, double[] shown)
    {
        // Exact halves stay, so the whole may end on a half; the rest adds up to the nearest unit.
        var units = loose.Select(i => Math.Floor(measures[i].Value * perMillimetre)).ToArray();
        var missing = (int)Math.Round(loose.Sum(i => measures[i].Value * perMillimetre) - units.Sum(), MidpointRounding.AwayFromZero);
        RoundUp(missing, loose, units, perMillimetre, measures);
        for (var k = 0; k < loose.Length; k++)
        {
            shown[loose[k]] = units[k] / perMillimetre;
        }
    }
}
